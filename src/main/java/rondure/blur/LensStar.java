package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import rondure.base.Moments;
import rondure.base.Stamp;

/**
 * What a star looks like at a place of a lens: the rays of an evenly lit pupil, each with the core
 * of the lens and sensor about it.
 *
 * <p>A ray through the pupil at (ρ, φ) lands at (A ρ cos φ / 2 + c ρ² (2 + cos 2φ), B ρ sin φ / 2 +
 * c ρ² sin 2φ) along and across the radius, with discs A and B and coma c (Born &amp; Wolf,
 * Principles of Optics, ch. 5, from memory): second moments A²/16 + c²/2 and B²/16 + c²/6.
 *
 * @param spot the rays' figure
 * @param coreFwhmPx half-maximum width of the core, a Gaussian
 */
public record LensStar(LensSurface.Spot spot, double coreFwhmPx) {
  private static final int RINGS = 16;
  private static final int SPOKES = 36;

  /** Samples over the stamp for the width: half a percent of it. */
  private static final int WIDTH_SAMPLES = 120;

  /** A ray's landing place about the centroid, px, stored axes. */
  private record Landing(double x, double y) {}

  public LensStar {
    if (!(coreFwhmPx > 0)) {
      throw new IllegalArgumentException("coreFwhmPx must be > 0, was " + coreFwhmPx);
    }
  }

  /** How far from the centroid its light reaches, px: beyond it is fainter than a thousandth. */
  public double reachPx() {
    double disc = Math.max(Math.abs(spot.alongPx()), Math.abs(spot.acrossPx())) / 2;
    return disc + 2 * spot.comaPx() + 1.6 * coreFwhmPx;
  }

  /**
   * Its picture, peak scaled to 1, centroid in the middle, stored orientation.
   *
   * @param halfSidePx from the middle to the centre of the outermost samples, px
   * @param side samples along a side, odd
   */
  public Stamp stamp(double halfSidePx, int side) {
    double[] light = light(halfSidePx, side);
    double peak = 0;
    for (double value : light) {
      peak = Math.max(peak, value);
    }
    float[] values = new float[light.length];
    for (int i = 0; i < light.length; i++) {
      values[i] = (float) (light[i] / peak);
    }
    return new Stamp(side, values);
  }

  /** Diameter of the circle as large as the part of the star above half its peak, px. */
  public double widthPx() {
    double half = reachPx();
    int side = WIDTH_SAMPLES + 1;
    double[] light = light(half, side);
    double peak = 0;
    for (double value : light) {
      peak = Math.max(peak, value);
    }
    int inside = 0;
    for (double value : light) {
      inside += value >= peak / 2 ? 1 : 0;
    }
    double sample = 2 * half / (side - 1);
    return 2 * Math.sqrt(inside / Math.PI) * sample;
  }

  private double[] light(double halfSidePx, int side) {
    double[] light = new double[side * side];
    double[] alongX = new double[side];
    double[] alongY = new double[side];
    for (Landing ray : rays()) {
      fill(alongX, halfSidePx, ray.x());
      fill(alongY, halfSidePx, ray.y());
      for (int y = 0; y < side; y++) {
        for (int x = 0; x < side; x++) {
          light[y * side + x] += alongY[y] * alongX[x];
        }
      }
    }
    return light;
  }

  /** A Gaussian of the core's width about a place. */
  private void fill(double[] profile, double halfSidePx, double at) {
    double sigma = coreFwhmPx / Moments.FWHM_PER_SIGMA;
    for (int i = 0; i < profile.length; i++) {
      double off = (2.0 * i / (profile.length - 1) - 1) * halfSidePx - at;
      profile[i] = Math.exp(-off * off / (2 * sigma * sigma));
    }
  }

  /** Rays that each stand for the same area of the pupil. */
  private List<Landing> rays() {
    List<Landing> rays = new ArrayList<>();
    double cos = Math.cos(spot.angleRad());
    double sin = Math.sin(spot.angleRad());
    for (int ring = 0; ring < RINGS; ring++) {
      double square = (ring + 0.5) / RINGS;
      double rho = Math.sqrt(square);
      for (int spoke = 0; spoke < SPOKES; spoke++) {
        double phi = 2 * Math.PI * (spoke + 0.5 * (ring % 2)) / SPOKES;
        double coma = spot.comaPx() * square;
        double along = spot.alongPx() / 2 * rho * Math.cos(phi) + coma * (2 + Math.cos(2 * phi));
        double across = spot.acrossPx() / 2 * rho * Math.sin(phi) + coma * Math.sin(2 * phi);
        double out = along - spot.comaPx();
        rays.add(new Landing(out * cos - across * sin, out * sin + across * cos));
      }
    }
    return rays;
  }
}
