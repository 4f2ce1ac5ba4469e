package rondure.blur;

/**
 * The rings of an average star as core · a + halo · A + b, the shapes of both given: a, A and b by
 * weighted least squares with what is known of a and b before (normal equations, Cramer's rule).
 */
final class HaloModel {
  /** Height of the core over the peak, before the rings are seen. */
  private static final double CORE_SPREAD = 0.15;

  private final HaloRings rings;
  private final HaloGround ground;
  private final HaloAround around;
  private final double elongation;

  /**
   * @param elongation half-maximum length over width: drawn-out cores hold as much more light
   */
  HaloModel(HaloRings rings, HaloGround ground, HaloAround around, double elongation) {
    this.rings = rings;
    this.ground = ground;
    this.around = around;
    this.elongation = elongation;
  }

  /**
   * @param core height of the core, over the peak
   * @param halo height of the halo
   * @param haloError its standard error
   * @param misfit χ², what was known before included
   */
  record Solved(double core, double halo, double haloError, double misfit) {}

  /** A core or a halo of height 1. */
  static final class Shape {
    private final double[] rings;
    private final double[] around;
    private final double all;
    private final double narrow;
    private final double between;

    /**
     * @param rings its light in each ring; all 0 for none
     * @param around its light in the rings beyond
     * @param all its whole light
     * @param narrow share of that in the wing ratio's narrow aperture
     * @param between share of that between the apertures
     */
    Shape(double[] rings, double[] around, double all, double narrow, double between) {
      this.rings = rings;
      this.around = around;
      this.all = all;
      this.narrow = all * narrow;
      this.between = all * between;
    }

    /** What it adds to the wings beyond the ratio measured, over the core's narrow light. */
    private double wings(double measured, double coreNarrow) {
      return (between - measured * narrow) / coreNarrow;
    }
  }

  /** Wings are the core's and the halo's together; the ground is taken off them already. */
  Solved solve(Shape coreShape, Shape haloShape) {
    double[] coreLight = coreShape.rings;
    double[] haloLight = haloShape.rings;
    double sureWings = 1 / (ground.wingsError() * ground.wingsError());
    double coreWings = coreShape.wings(ground.wings(), coreShape.narrow);
    double haloWings = haloShape.wings(ground.wings(), coreShape.narrow);
    double sureCore = 1 / (CORE_SPREAD * CORE_SPREAD);
    double sureLevel = 1 / (ground.error() * ground.error());
    double cc = sureCore + sureWings * coreWings * coreWings;
    double ch = sureWings * coreWings * haloWings;
    double hh = sureWings * haloWings * haloWings;
    double c1 = 0;
    double h1 = 0;
    double one = sureLevel;
    double cy = sureCore;
    double hy = 0;
    double y1 = sureLevel * ground.level();
    double square = sureCore + sureLevel * ground.level() * ground.level();
    for (int i = 0; i < rings.size(); i++) {
      double w = rings.weight(i);
      double y = rings.light(i);
      cc += w * coreLight[i] * coreLight[i];
      ch += w * coreLight[i] * haloLight[i];
      hh += w * haloLight[i] * haloLight[i];
      c1 += w * coreLight[i];
      h1 += w * haloLight[i];
      one += w;
      cy += w * coreLight[i] * y;
      hy += w * haloLight[i] * y;
      y1 += w * y;
      square += w * y * y;
    }
    // Beyond: what core and halo show, over the light of the core, which is what stars' fits hold.
    double flux = coreShape.all * elongation;
    for (int i = 0; i < around.size(); i++) {
      double w = around.weight(i, flux);
      double core = coreShape.around[i] - around.light(i) * flux;
      double halo = haloShape.around[i];
      cc += w * core * core;
      ch += w * core * halo;
      hh += w * halo * halo;
    }
    // The level is eliminated first, then the core.
    double ccLess = cc - c1 * c1 / one;
    double chLess = ch - c1 * h1 / one;
    double hhLess = hh - h1 * h1 / one;
    double cyLess = cy - c1 * y1 / one;
    double hyLess = hy - h1 * y1 / one;
    double pivot = hhLess - chLess * chLess / ccLess;
    boolean told = hh > 0 && pivot > 1e-12 * hh;
    double halo = told ? (hyLess - chLess * cyLess / ccLess) / pivot : 0;
    double core = (cyLess - chLess * halo) / ccLess;
    double level = (y1 - c1 * core - h1 * halo) / one;
    double misfit = square - core * cy - halo * hy - level * y1;
    return new Solved(
        Math.max(0.1, core), halo, told ? 1 / Math.sqrt(pivot) : 1, Math.max(0, misfit));
  }
}
