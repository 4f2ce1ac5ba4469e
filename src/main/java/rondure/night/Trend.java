package rondure.night;

import org.hipparchus.special.Erf;
import rondure.base.RobustStats;

/**
 * A steady rise or fall, without a model of its noise: slope by Theil and Sen (Sen 1968, J. Am.
 * Stat. Assoc. 63, 1379), and how likely chance gives as many ordered pairs (Mann 1945,
 * Econometrica 13, 245; Kendall).
 *
 * @param slope per unit of x
 * @param intercept at x = 0
 * @param chance two-sided probability of a trend as clear in a series without one
 */
record Trend(double slope, double intercept, double chance) {

  /** Of at least two points; x strictly growing. */
  static Trend of(double[] x, double[] y) {
    int count = x.length;
    double[] slopes = new double[count * (count - 1) / 2];
    int next = 0;
    long score = 0;
    for (int i = 0; i < count; i++) {
      for (int j = i + 1; j < count; j++) {
        slopes[next++] = (y[j] - y[i]) / (x[j] - x[i]);
        score += (long) Math.signum(y[j] - y[i]);
      }
    }
    double slope = RobustStats.median(slopes);
    double[] rests = new double[count];
    for (int i = 0; i < count; i++) {
      rests[i] = y[i] - slope * x[i];
    }
    return new Trend(slope, RobustStats.median(rests), chance(score, count));
  }

  /** Variance n(n-1)(2n+5)/18 of the score without ties, one off for continuity. */
  private static double chance(long score, int count) {
    double variance = count * (count - 1.0) * (2.0 * count + 5) / 18;
    double z = Math.max(0, Math.abs(score) - 1) / Math.sqrt(variance);
    return Erf.erfc(z / Math.sqrt(2));
  }

  double at(double x) {
    return intercept + slope * x;
  }
}
