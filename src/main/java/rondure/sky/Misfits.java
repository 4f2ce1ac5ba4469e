package rondure.sky;

import java.util.Arrays;
import rondure.base.RobustStats;
import rondure.base.RobustWeights;

/**
 * How far sightings lie from a fit, each over its stated error: a length in two dimensions;
 * infinite where the fit shows nothing. Pure functions.
 */
final class Misfits {
  private static final double MEDIAN_PER_SIGMA = Math.sqrt(2 * Math.log(2));
  private static final double LEAST_SCALE = 1e-6;
  private static final double TUKEY_SQUARE =
      RobustWeights.TUKEY_CONSTANT * RobustWeights.TUKEY_CONSTANT;

  private Misfits() {}

  /**
   * Typical misfit over the stated errors, per axis; 1 without sightings.
   *
   * @param freeShare of the numbers measured, what the unknowns leave free
   */
  static double scale(double[] misfits, double freeShare) {
    double median = RobustStats.median(misfits);
    return Double.isNaN(median)
        ? 1
        : Math.max(LEAST_SCALE, median / MEDIAN_PER_SIGMA / Math.sqrt(freeShare));
  }

  static boolean counts(double misfit, double scale) {
    return misfit < RobustWeights.TUKEY_CONSTANT * scale;
  }

  /** Share of the sightings that count. */
  static double inlierShare(double[] misfits, double scale) {
    return Arrays.stream(misfits).filter(m -> counts(m, scale)).count() / (double) misfits.length;
  }

  /** Sum of Tukey's loss, twice: chi squared where misfits are small, level for outliers. */
  static double loss(double[] misfits, double scale) {
    double sum = 0;
    for (double misfit : misfits) {
      double left = 1 - Math.pow(misfit / scale, 2) / TUKEY_SQUARE;
      sum += TUKEY_SQUARE / 3 * (1 - Math.pow(Math.max(0, left), 3));
    }
    return sum;
  }

  /** Covariance of a Tukey fit over that of its weighted least squares at the same scale. */
  static double growth(double[] misfits, double scale, double freeShare) {
    double slope = 0;
    double influence = 0;
    double weights = 0;
    for (double misfit : misfits) {
      if (counts(misfit, scale)) {
        double u = misfit / scale;
        double weight = RobustWeights.tukey(u);
        weights += weight;
        slope += RobustWeights.tukeySlope(u, 2);
        influence += weight * weight * u * u / 2;
      }
    }
    return slope > 0 ? influence * weights / (slope * slope * freeShare) : 1;
  }
}
