package rondure.blur;

import java.util.Comparator;
import java.util.List;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * What stands between the stars besides their own light, and what wings they have by themselves
 * ({@link OwnWings}): light of neighbours and of stars below the limit differs from star to star
 * and lies as flat beside faint stars as beside bright ones, while wings and halos grow with the
 * star.
 *
 * @param level of the average star's picture, over its peak
 * @param error standard error of that
 * @param wings light of the stars between the wing ratio's apertures over that in the narrow one,
 *     that of others taken off
 * @param wingsError standard error of that
 */
record HaloGround(double level, double error, double wings, double wingsError) {
  /** Radii of the wing ratio's apertures (StarSettings), in half-maximum widths. */
  static final double NARROW = 1;

  static final double WIDE = 2.5;

  /** What sharp stars of a Gaussian core are measured to have (1/15 before pixels cut it). */
  private static final double GAUSSIAN_WINGS = 0.04;

  /**
   * Of what is beyond a Gaussian's wings half is measured: where pixels give no value the star's
   * model counts, which has neither wings nor halo. Drawn Moffat cores of β from 3.3 to 4.6 and
   * halos showed 0.4 to 0.6 of what their closed forms have.
   */
  private static final double HIDDEN_SHARE = 1;

  private static final double HIDDEN_ERROR = 0.5;

  /** Apertures cut pixels, and lenses change over the field. */
  private static final double WINGS_DOUBT = 0.02;

  /** Where stars differ much they may differ by themselves as well, as behind a tilted lens. */
  private static final double NEIGHBOURS_DOUBT = 0.15;

  /** Of too few stars nothing is told. */
  private static final double UNTOLD = 10;

  /** Stars of the average, brightest first (AverageStars). */
  private static final int AVERAGED = 40;

  private static final int LEAST_STARS = 12;

  /**
   * The middle half of the stars, which makes the average, has less of it than the mean, or more.
   */
  private static final double DOUBT = 0.45;

  /** The mesh of the sky leaves as much, over the peak. */
  private static final double MESH = 0.0015;

  /** Light of a Gaussian of peak 1 and half-maximum width 1: π / (4 ln 2). */
  private static final double GAUSSIAN_LIGHT = Math.PI / (4 * Math.log(2));

  static HaloGround of(StarField field, FieldShape shape) {
    List<Star> stars =
        field.stars().stream()
            .filter(star -> star.fluxCounts() > 0)
            .sorted(Comparator.comparingDouble(Star::fluxCounts).reversed())
            .toList();
    if (stars.size() < LEAST_STARS) {
      return new HaloGround(0, 4 * MESH, 0, UNTOLD);
    }
    double unit = shape.minorFwhmPx() * shape.minorFwhmPx();
    double ring = Math.PI * (WIDE * WIDE - NARROW * NARROW) * unit;
    OwnWings own = OwnWings.of(stars, field.sky().noiseCounts() * Math.sqrt(ring));
    double ofOthers =
        stars.stream()
            .limit(AVERAGED)
            .mapToDouble(s -> own.ofOthers(s.fluxCounts()))
            .average()
            .orElse(0);
    double level = ofOthers * GAUSSIAN_LIGHT * unit / ring;
    double beyond = Math.max(0, own.wings() - GAUSSIAN_WINGS);
    double doubt = Math.hypot(WINGS_DOUBT, NEIGHBOURS_DOUBT * own.neighbours());
    return new HaloGround(
        level,
        Math.hypot(MESH, DOUBT * level),
        own.wings() + HIDDEN_SHARE * beyond,
        Math.hypot(Math.hypot(own.error(), doubt), HIDDEN_ERROR * beyond));
  }
}
