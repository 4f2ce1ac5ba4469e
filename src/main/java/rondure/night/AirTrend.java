package rondure.night;

import java.util.Arrays;
import rondure.base.RobustStats;

/**
 * Takes the air's part off a series of losses: stars that rise or set lose less or more and more
 * light, steadily, all through a scene. Dew and cloud begin and end.
 */
final class AirTrend {
  /**
   * Air takes 0.06 mag over a degree of altitude near 15° (0.25 mag per airmass of 1 / sin h), and
   * stars rise or set by some 11° an hour at middle latitudes (15° cos φ).
   */
  private static final double MOST_MAG_PER_HOUR = 0.7;

  /** Without a steady change the losses scatter less by this factor. */
  private static final double LEFT_SHARE = 0.2;

  /** Fewest frames that tell the air's part before dew or cloud, and fewest after. */
  private static final int LEAST_BEFORE = 10;

  private static final int LEAST_AFTER = 4;

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
    return plain ? left : sinceBend(hours, lostMag);
  }

  /**
   * Where the losses are two straight lines, the first is the air's and goes on under the other.
   */
  private static double[] sinceBend(double[] hours, double[] lostMag) {
    int count = lostMag.length;
    int bend = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = LEAST_BEFORE; i <= count - LEAST_AFTER; i++) {
      double misfit = line(hours, lostMag, 0, i)[2] + line(hours, lostMag, i, count)[2];
      if (misfit < least) {
        least = misfit;
        bend = i;
      }
    }
    boolean bent = bend > 0 && least < LEFT_SHARE * LEFT_SHARE * line(hours, lostMag, 0, count)[2];
    double[] air = line(hours, lostMag, 0, bent ? bend : count);
    if (!bent || Math.abs(air[1]) > MOST_MAG_PER_HOUR) {
      return lostMag;
    }
    double[] left = new double[count];
    Arrays.setAll(left, i -> lostMag[i] - air[0] - air[1] * hours[i]);
    return left;
  }

  /** Level at 0, slope and sum of squared residuals of the line through some of the values. */
  private static double[] line(double[] x, double[] y, int from, int until) {
    double meanX = Arrays.stream(x, from, until).average().orElse(0);
    double meanY = Arrays.stream(y, from, until).average().orElse(0);
    double squares = 0;
    double products = 0;
    double spread = 0;
    for (int i = from; i < until; i++) {
      squares += (x[i] - meanX) * (x[i] - meanX);
      products += (x[i] - meanX) * (y[i] - meanY);
      spread += (y[i] - meanY) * (y[i] - meanY);
    }
    double slope = squares > 0 ? products / squares : 0;
    return new double[] {meanY - slope * meanX, slope, Math.max(0, spread - slope * products)};
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
