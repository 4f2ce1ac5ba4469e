package rondure.blur;

import java.util.Optional;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.AverageStar;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * How a smear's light lies along its line, from the average star: evenly (a trail or a steady sag,
 * kurtosis 1.8), at the turning points (a vibration, 1.5), or mostly in one place with a tail (a
 * knock or gust that rings down, above 3).
 *
 * <p>Fourth cumulants of blurs that convolve add, as second moments do. Core, defocus and whatever
 * else is round adds as much across the line as along it, so
 *
 * <p>kurtosis = 3 + (κ4 along - κ4 across) / (M along - M across)²
 *
 * <p>is that of the smear alone. Moments are taken in a round window of 2.5 half-maximum lengths,
 * with the rim's level as zero.
 *
 * @param kurtosis of the smear
 * @param error its standard error from the noise of the average's rim
 * @param stretchPx2 M along - M across
 */
record SmearKurtosis(double kurtosis, double error, double stretchPx2) {
  /** Of an even line: 9/5. */
  static final double LINE = 1.8;

  private static final double REACH_PER_FWHM = 2.5;
  private static final int LEAST_STARS = 15;
  private static final double LEAST_STRETCH_PX2 = 0.5;

  private static final double LARGEST_ERROR = 0.6;

  /** What differs between the directions of a frame, a lens, a lattice. */
  private static final double MODEL_ERROR = 0.2;

  /** A shaken camera may draw anything from 1.4 to 5, most of it near the low end. */
  private static final double SHAKE_DENSITY = 0.4;

  private static final double MOST_FOR_SKY = 1;
  private static final double MOST_AGAINST_SKY = 3;

  /** The kurtosis of a frame's smear, when noise lets it be told. */
  static Optional<SmearKurtosis> of(StarField field) {
    double fwhm =
        RobustStats.median(field.stars().stream().mapToDouble(Star::fwhmMajorPx).toArray());
    return field.averageStars().stream()
        .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
        .filter(average -> average.starCount() >= LEAST_STARS)
        .findFirst()
        .map(average -> of(new AverageGrid(average, REACH_PER_FWHM * fwhm)))
        .filter(SmearKurtosis::isTelling);
  }

  static SmearKurtosis of(AverageGrid grid) {
    Moments moments = grid.moments();
    double angle = moments.positionAngleRad();
    double stretch = moments.majorPx2() - moments.minorPx2();
    double along = cumulant(grid, angle, moments.majorPx2());
    double across = cumulant(grid, angle + Math.PI / 2, moments.minorPx2());
    double error =
        grid.errorOf(
            (x, y) ->
                weight(x, y, angle, moments.majorPx2())
                    - weight(x, y, angle + Math.PI / 2, moments.minorPx2()));
    double square = Math.max(1e-12, stretch * stretch);
    return new SmearKurtosis(3 + (along - across) / square, error / square, stretch);
  }

  private boolean isTelling() {
    return stretchPx2 > LEAST_STRETCH_PX2 && error < LARGEST_ERROR;
  }

  /** Kurtosis of the whole average star along a direction, core and all. */
  static double ofStar(AverageGrid grid, double angleRad) {
    double square = grid.mean((x, y) -> Math.pow(along(x, y, angleRad), 2));
    return grid.mean((x, y) -> Math.pow(along(x, y, angleRad), 4)) / (square * square);
  }

  /** Log-odds for an even line, which the sky draws, against a shaken camera. */
  double skyLogOdds() {
    double sigma = Math.hypot(MODEL_ERROR, error);
    double off = (kurtosis - LINE) / sigma;
    double line = Math.exp(-off * off / 2) / (sigma * Math.sqrt(2 * Math.PI));
    double odds = Math.log((line + 1e-6) / SHAKE_DENSITY);
    return Math.max(-MOST_AGAINST_SKY, Math.min(MOST_FOR_SKY, odds));
  }

  private static double cumulant(AverageGrid grid, double angle, double px2) {
    return grid.mean((x, y) -> Math.pow(along(x, y, angle), 4)) - 3 * px2 * px2;
  }

  /** What light at a place changes the cumulant by, to first order. */
  private static double weight(double x, double y, double angle, double px2) {
    double square = Math.pow(along(x, y, angle), 2);
    return square * square - 6 * px2 * square;
  }

  private static double along(double x, double y, double angle) {
    return x * Math.cos(angle) + y * Math.sin(angle);
  }
}
