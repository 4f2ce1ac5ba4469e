package rondure.night;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * Where the level of a series changes: the division into stretches of constant level with the least
 * sum of squared residuals over variance plus a price for each change (optimal partitioning:
 * Jackson et al. 2005, IEEE Signal Process. Lett. 12, 105).
 *
 * <p>The price is the quantile of χ² with one degree of freedom that a change which is not there
 * exceeds with the stated rate at one place; doubled, because the place is chosen too.
 */
final class ChangePoints {
  private ChangePoints() {}

  /**
   * Starts of the stretches, the first 0.
   *
   * @param values the series, in order
   * @param sigma standard error of each value, > 0
   * @param falseAlarmRate chance of a change where there is none, for each place
   */
  static List<Integer> of(double[] values, double[] sigma, double falseAlarmRate) {
    int count = values.length;
    if (count == 0) {
      return List.of();
    }
    double price = price(falseAlarmRate);
    Sums sums = new Sums(values, sigma);
    double[] best = new double[count + 1];
    int[] from = new int[count + 1];
    best[0] = -price;
    for (int end = 1; end <= count; end++) {
      best[end] = Double.POSITIVE_INFINITY;
      for (int start = 0; start < end; start++) {
        double cost = best[start] + sums.cost(start, end) + price;
        if (cost < best[end]) {
          best[end] = cost;
          from[end] = start;
        }
      }
    }
    List<Integer> starts = new ArrayList<>();
    for (int end = count; end > 0; end = from[end]) {
      starts.add(from[end]);
    }
    Collections.reverse(starts);
    return starts;
  }

  /** What a change must better the sum of squares by. */
  static double price(double falseAlarmRate) {
    return 2 * new ChiSquaredDistribution(1).inverseCumulativeProbability(1 - falseAlarmRate);
  }

  /** Running sums of weight, weight times value and weight times square. */
  private static final class Sums {
    private final double[][] sums;

    Sums(double[] values, double[] sigma) {
      sums = new double[3][values.length + 1];
      for (int i = 0; i < values.length; i++) {
        double weight = 1 / (sigma[i] * sigma[i]);
        sums[0][i + 1] = sums[0][i] + weight;
        sums[1][i + 1] = sums[1][i] + weight * values[i];
        sums[2][i + 1] = sums[2][i] + weight * values[i] * values[i];
      }
    }

    /** Squared residuals about the mean from start to before end, over variance. */
    double cost(int start, int end) {
      double weight = sums[0][end] - sums[0][start];
      double mean = (sums[1][end] - sums[1][start]) / weight;
      return Math.max(0, sums[2][end] - sums[2][start] - weight * mean * mean);
    }
  }
}
