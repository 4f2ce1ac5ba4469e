package rondure.stars;

import java.util.List;
import java.util.function.ToDoubleFunction;
import rondure.base.Moments;
import rondure.base.RobustStats;

/**
 * What a frame's stars look like on the whole, from the bright ones.
 *
 * @param moments median of each component over the pilot stars
 * @param majorPx2 median variance along the long axes, whatever their directions
 * @param lengthPx median of √(12 (M_major − M_minor))
 * @param pilotCount stars it rests on
 */
record Typical(Moments moments, double majorPx2, double lengthPx, int pilotCount) {
  /** A sharp star on a coarse sensor, pixel box included: the start when nothing is known. */
  private static final Moments SHARP = Moments.round(0.5);

  private static final double SMALLEST_WINDOW_PX = 2;
  private static final double WINDOW_SIGMAS = 2.1;

  static Typical of(List<Moments> pilots) {
    if (pilots.isEmpty()) {
      return new Typical(SHARP, SHARP.majorPx2(), 0, 0);
    }
    Moments median =
        new Moments(
            median(pilots, Moments::xxPx2),
            median(pilots, Moments::xyPx2),
            median(pilots, Moments::yyPx2));
    double lacking = Math.max(0, 0.2 - median.minorPx2());
    return new Typical(
        median.plus(Moments.round(lacking)),
        median(pilots, Moments::majorPx2),
        median(pilots, Typical::lengthPx),
        pilots.size());
  }

  private static double median(List<Moments> pilots, ToDoubleFunction<Moments> part) {
    return RobustStats.median(pilots.stream().mapToDouble(part).toArray());
  }

  /** Length of the line that would make a star as long as it is, √(12 (M_major − M_minor)). */
  static double lengthPx(Moments moments) {
    return Math.sqrt(24 * moments.spin2Px2());
  }

  /**
   * The room a star needs around it: the typical moments, or its own where they are larger, and
   * never less than those of a 2 px measuring window of 2.1 σ.
   */
  Moments roomFor(Moments rough) {
    Moments own = rough.times(1.2);
    Moments base = own.meanPx2() > moments.meanPx2() && own.isPositive() ? own : moments;
    double least = SMALLEST_WINDOW_PX * SMALLEST_WINDOW_PX / (WINDOW_SIGMAS * WINDOW_SIGMAS);
    return base.plus(Moments.round(Math.max(0, least - base.minorPx2())));
  }

  /**
   * Where a fit starts: the star's rough moments where they are larger than the typical ones. Wings
   * swell the moments inside a faint isophote, so these are held to what flux over peak allows, 1.3
   * times that of a Gaussian: F = 2π √det(M) · peak.
   */
  Moments startFor(Candidate candidate) {
    Moments rough = candidate.isophotal();
    double determinant = rough.majorPx2() * rough.minorPx2();
    double area = candidate.fluxCounts() / (2 * Math.PI * candidate.peakCounts());
    double most = determinant > 0 && area > 0 ? 1.3 * area / Math.sqrt(determinant) : 1.2;
    Moments own = rough.times(Math.min(1.2, most));
    boolean useOwn = own.meanPx2() > moments.meanPx2() && own.minorPx2() > 0.2;
    return useOwn ? own : moments;
  }

  /** True for a shape far longer than the frame's: aircraft, satellite, meteor. */
  boolean isStreak(Moments shape) {
    double length = lengthPx(shape);
    return pilotCount >= 5 && length > 3 * lengthPx && length > lengthPx + 15;
  }
}
