package rondure.night;

import java.util.Arrays;
import rondure.base.RobustStats;

/**
 * Takes the air's part off a series of losses: stars that rise or set lose less or more and more
 * light, steadily, all through a scene. Dew and cloud begin and end.
 */
final class AirTrend {
  /** Air takes 0.025 mag over a degree of altitude near 20° (0.25 mag per airmass), 15° an hour. */
  private static final double MOST_MAG_PER_HOUR = 0.4;

  /** Without a steady change the losses scatter less by this factor. */
  private static final double LEFT_SHARE = 0.2;

  private AirTrend() {}

  /**
   * @param hours of each frame, growing
   * @param lostMag losses; NaN where not known
   * @return the losses without the trend, 0 at its clearer end; as given where none is plain
   */
  static double[] off(double[] hours, double[] lostMag) {
    double slope = slope(hours, lostMag);
    double bounded = Math.max(-MOST_MAG_PER_HOUR, Math.min(MOST_MAG_PER_HOUR, slope));
    double clear = hours.length == 0 ? 0 : bounded > 0 ? hours[0] : hours[hours.length - 1];
    double[] left = new double[lostMag.length];
    Arrays.setAll(left, i -> lostMag[i] - bounded * (hours[i] - clear));
    boolean plain = RobustStats.madSigma(left) < LEFT_SHARE * RobustStats.madSigma(lostMag);
    return plain ? left : lostMag;
  }

  /** Median slope of all pairs (Theil 1950, Sen 1968, J. Am. Stat. Assoc. 63, 1379). */
  private static double slope(double[] x, double[] y) {
    int count = x.length;
    double[] slopes = new double[count * (count - 1) / 2];
    int next = 0;
    for (int i = 0; i < count; i++) {
      for (int j = i + 1; j < count; j++) {
        slopes[next++] = (y[j] - y[i]) / (x[j] - x[i]);
      }
    }
    double median = RobustStats.median(slopes);
    return Double.isNaN(median) ? 0 : median;
  }
}
