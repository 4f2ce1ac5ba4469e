package rondure.blur;

import java.util.Comparator;
import java.util.List;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * What stands between the stars besides their own light: faint stars below the limit raise the sky,
 * as much beside faint stars as beside bright ones, while wings and halos grow with the star. The
 * wing ratio of star i is 1 + w + k / flux: w is the stars', k the ground's, told by a robust line
 * through the stars of all brightnesses.
 *
 * @param level of the average star's picture, over its peak
 * @param error standard error of that
 * @param wings light of the stars between the wing ratio's apertures over that in the narrow one,
 *     the ground taken off
 * @param wingsError standard error of that
 */
record HaloGround(double level, double error, double wings, double wingsError) {
  /** Radii of the wing ratio's apertures (StarSettings), in half-maximum widths. */
  static final double NARROW = 1;

  static final double WIDE = 2.5;

  /** What sharp stars of a Gaussian core are measured to have (1/15 before pixels cut it). */
  private static final double GAUSSIAN_WINGS = 0.04;

  /**
   * On the green sites of a mosaic every second pixel counts with the star's model, which has no
   * halo: of what is beyond a Gaussian's wings then only half is seen. Which files are such is not
   * stored, so the middle of both counts, and both are within its error.
   */
  private static final double HIDDEN_SHARE = 1;

  private static final double HIDDEN_ERROR = 0.6;

  /** Apertures cut pixels, and lenses change over the field. */
  private static final double WINGS_DOUBT = 0.02;

  /** Of too few stars nothing is told. */
  private static final double UNTOLD = 10;

  /** Stars of the average, brightest first (AverageStars). */
  private static final int AVERAGED = 40;

  private static final int LEAST_STARS = 12;

  /** Bright stars are let keep brighter neighbours: the ground beside them is higher. */
  private static final double BESIDE_BRIGHT = 1.35;

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
    WingLine line = WingLine.of(stars, field.sky().noiseCounts() * Math.sqrt(ring));
    double perFlux =
        stars.stream().limit(AVERAGED).mapToDouble(s -> 1 / s.fluxCounts()).average().orElse(0);
    double toPeak = perFlux * GAUSSIAN_LIGHT * unit / ring;
    double level = Math.max(0, BESIDE_BRIGHT * line.slope() * toPeak);
    double beyond = Math.max(0, line.start() - GAUSSIAN_WINGS);
    double error = line.slopeError() * toPeak;
    return new HaloGround(
        level,
        Math.sqrt(MESH * MESH + error * error + DOUBT * DOUBT * level * level),
        line.start() + HIDDEN_SHARE * beyond,
        Math.sqrt(
            line.startError() * line.startError()
                + WINGS_DOUBT * WINGS_DOUBT
                + HIDDEN_ERROR * HIDDEN_ERROR * beyond * beyond));
  }
}
