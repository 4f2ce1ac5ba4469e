package rondure.blur;

import java.util.Map;
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
 * <p>is that of the smear alone. The rim's level is zero. Noise grows as the fourth power of the
 * distance, so real stars are read in a round window of one half-maximum length, and compared with
 * a line and a vibration of the same stretch, drawn and read in the same way ({@link
 * SmearDrawing}).
 *
 * @param kurtosis of the smear, in the window
 * @param error its standard error from the noise of the average's rim
 * @param stretchPx2 M along - M across, in the window
 */
record SmearKurtosis(double kurtosis, double error, double stretchPx2) {
  private static final double REACH_PER_FWHM = 1.0;
  private static final int LEAST_STARS = 15;

  /** Less stretch drowns in what lenses and lattices do. */
  private static final double LEAST_STRETCH_PX2 = 1.2;

  private static final double LARGEST_ERROR = 0.5;

  /** No light can have less (Pearson 1916; from memory): what measures less is no smear. */
  private static final double LEAST_KURTOSIS = 1;

  /**
   * What differs between the directions of a frame, a lens, a lattice: seven frames of even trails
   * from a simulator of another hand were off by -0.8 to +0.7, and by as much between windows.
   */
  private static final double MODEL_ERROR = 0.5;

  /** Shakes that are no vibration draw anything from 1 to 5. */
  private static final double ANY_SHAKE_DENSITY = 0.25;

  private static final double MOST_FOR_SKY = 0.8;
  private static final double MOST_AGAINST_SKY = 1.5;
  private static final double TELLING_LOG_ODDS = 0.5;

  /**
   * A smear beside what a line and a vibration would look like.
   *
   * @param seen as measured
   * @param ofLine kurtosis of an even line of this stretch in the same window
   * @param ofVibration the same of a sinusoid
   */
  record Compared(SmearKurtosis seen, double ofLine, double ofVibration) {

    /** Log-odds for an even line, which the sky draws, against a shaken camera. */
    double skyLogOdds() {
      double sigma = Math.hypot(MODEL_ERROR, seen.error);
      double line = normal(seen.kurtosis - ofLine, sigma);
      double shake = Math.max(normal(seen.kurtosis - ofVibration, sigma), ANY_SHAKE_DENSITY);
      double odds = Math.log((line + 1e-6) / shake);
      return Math.max(-MOST_AGAINST_SKY, Math.min(MOST_FOR_SKY, odds));
    }

    /** The sentence, where the kurtosis tells anything. */
    Optional<Evidence> evidence() {
      double odds = skyLogOdds();
      if (Math.abs(odds) < TELLING_LOG_ODDS) {
        return Optional.empty();
      }
      Evidence.Kind shaken =
          seen.kurtosis < ofLine ? Evidence.Kind.SMEAR_AT_ENDS : Evidence.Kind.SMEAR_PEAKED;
      return Optional.of(
          new Evidence(
              odds > 0 ? Evidence.Kind.SMEAR_EVEN : shaken,
              Map.of("kurtosis", seen.kurtosis, "lineKurtosis", ofLine)));
    }

    private static double normal(double off, double sigma) {
      return Math.exp(-off * off / (2 * sigma * sigma)) / (sigma * Math.sqrt(2 * Math.PI));
    }
  }

  /** The kurtosis of a frame's smear, when stretch and noise let it be told. */
  static Optional<Compared> of(StarField field, FieldShape shape) {
    double stretch = shape.moments().majorPx2() - shape.moments().minorPx2();
    if (stretch < LEAST_STRETCH_PX2) {
      return Optional.empty();
    }
    double fwhm =
        RobustStats.median(field.stars().stream().mapToDouble(Star::fwhmMajorPx).toArray());
    return field.averageStars().stream()
        .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
        .filter(average -> average.starCount() >= LEAST_STARS)
        .findFirst()
        .map(average -> compared(average, shape, REACH_PER_FWHM * fwhm))
        .filter(compared -> compared.seen().error() < LARGEST_ERROR)
        .filter(compared -> compared.seen().kurtosis() > LEAST_KURTOSIS - MODEL_ERROR);
  }

  private static Compared compared(AverageStar average, FieldShape shape, double reachPx) {
    SmearDrawing drawing = SmearDrawing.like(average, shape.minorPx2());
    double stretch = shape.moments().majorPx2() - shape.moments().minorPx2();
    return new Compared(
        of(new AverageGrid(average, reachPx)),
        of(new AverageGrid(drawing.line(stretch), reachPx)).kurtosis(),
        of(new AverageGrid(drawing.vibration(stretch), reachPx)).kurtosis());
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

  /** Kurtosis of the whole average star along a direction, core and all. */
  static double ofStar(AverageGrid grid, double angleRad) {
    double square = grid.mean((x, y) -> Math.pow(along(x, y, angleRad), 2));
    return grid.mean((x, y) -> Math.pow(along(x, y, angleRad), 4)) / (square * square);
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
