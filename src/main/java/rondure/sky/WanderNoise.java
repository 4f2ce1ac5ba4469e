package rondure.sky;

import java.util.Arrays;

/**
 * Errors of the slopes of straight lines when what is measured moves: noise that is new with each
 * value (measuring; a head that trembles in the wind) and a random walk between them (a tripod that
 * settles, swings slowly, gives way). The residuals tell both by restricted likelihood (Harville
 * 1977, J. Am. Stat. Assoc. 72, 320; from memory), averaged over all sizes, since few values tell
 * them badly. Whether anything moves, and rather by noise or by a walk, the three axes tell
 * together; how much, each alone. Pure functions.
 */
final class WanderNoise {
  /** How likely it is beforehand that nothing moves, so that the noise is as stated. */
  private static final double AT_REST = 0.6;

  /** Variance of a step between two values over that of the noise. */
  private static final double[] WALKS = {0, 0.03, 0.1, 0.3, 1, 3, 10, 30, 100, 300};

  /** How likely each is where something moves. */
  private static final double[] BEFORE = {0.5, 0.02, 0.03, 0.06, 0.1, 0.1, 0.08, 0.06, 0.03, 0.02};

  /** How likely an axis is at rest where another moves. */
  private static final double AXIS_AT_REST = 0.3;

  /** The stated variance counts as so many values' residuals. */
  private static final double STATED_COUNT_AS = 6;

  /** Half steps of two: variances from a quarter of the stated one to a million times it. */
  private static final double[] SIZES = sizes(-4, 40);

  private static final double[] AS_STATED = asStated();
  private static final double[] ANY_SIZE = anySize();

  /** Fewer free values do not tell the size of the noise. */
  private static final int LEAST_FREEDOM = 2;

  private static final int MOST = 32;
  private static final int AXES = 3;

  private WanderNoise() {}

  /**
   * Standard errors of the slopes of least-squares lines through three components.
   *
   * @param times at least two, not all the same, in any order, s
   * @param values three rows, one value for each time
   * @param stated standard errors of a single value, > 0
   * @return in units of the values per second
   */
  static Vec slopeErrors(double[] times, double[][] values, Vec stated) {
    int each = 1 + (times.length - 1) / MOST;
    double[] fewer = means(times, each);
    double[][] own = new double[AXES][];
    Arrays.setAll(own, k -> means(values[k], each));
    double[] variances = stated.times(1 / Math.sqrt(each)).toArray();
    Arrays.setAll(variances, k -> variances[k] * variances[k]);
    Mean[] rest = new Mean[AXES];
    SlopeLine still = new SlopeLine(fewer, 0);
    Arrays.setAll(rest, k -> Mean.of(still.look(own[k], variances[k]), AS_STATED));
    Mean[] all = rest.clone();
    Arrays.setAll(all, k -> new Mean(0, rest[k].variance()));
    double known = Math.log(AT_REST) + Arrays.stream(rest).mapToDouble(Mean::log).sum();
    for (int j = 0; j < WALKS.length; j++) {
      SlopeLine line = new SlopeLine(fewer, WALKS[j]);
      Mean[] axes = new Mean[AXES];
      for (int k = 0; k < AXES; k++) {
        Mean moving = moving(line.look(own[k], variances[k]));
        axes[k] = rest[k].weighted(AXIS_AT_REST).with(moving.weighted(1 - AXIS_AT_REST));
      }
      double log = Arrays.stream(axes).mapToDouble(Mean::log).sum() + Math.log(BEFORE[j]);
      double together = log + Math.log(1 - AT_REST) - known;
      Arrays.setAll(all, k -> all[k].with(new Mean(together, axes[k].variance())));
    }
    return new Vec(all[0].error(), all[1].error(), all[2].error());
  }

  private static Mean moving(SlopeLine.Look look) {
    Mean stated = Mean.of(look, AS_STATED);
    return look.freedom() < LEAST_FREEDOM
        ? stated
        : stated.weighted(0.5).with(Mean.of(look, ANY_SIZE).weighted(0.5));
  }

  /**
   * The logarithm of a likelihood, and the mean variance of the slope under it.
   *
   * @param log natural logarithm
   * @param variance in units of the values per second, squared
   */
  private record Mean(double log, double variance) {

    /** Over the sizes of the noise. */
    static Mean of(SlopeLine.Look look, double[] before) {
      double most = Double.NEGATIVE_INFINITY;
      for (double size : SIZES) {
        most = Math.max(most, look.log(size));
      }
      double sum = 0;
      double sizes = 0;
      for (int i = 0; i < SIZES.length; i++) {
        double weight = before[i] * Math.exp(look.log(SIZES[i]) - most);
        sum += weight;
        sizes += weight * SIZES[i];
      }
      return new Mean(most + Math.log(sum), look.slopeVariance() * sizes / sum);
    }

    Mean weighted(double weight) {
      return new Mean(log + Math.log(weight), variance);
    }

    Mean with(Mean other) {
      double most = Math.max(log, other.log);
      double own = Math.exp(log - most);
      double more = Math.exp(other.log - most);
      double mean = (own * variance + more * other.variance) / (own + more);
      return new Mean(most + Math.log(own + more), mean);
    }

    double error() {
      return Math.sqrt(variance);
    }
  }

  private static double[] sizes(int from, int until) {
    double[] sizes = new double[until - from];
    Arrays.setAll(sizes, i -> Math.pow(2, (from + i) / 2.0));
    return sizes;
  }

  /** The inverse gamma distribution of a variance told by so many values. */
  private static double[] asStated() {
    double half = STATED_COUNT_AS / 2;
    return normed(
        Arrays.stream(SIZES).map(s -> Math.exp(-half / s - half * Math.log(s))).toArray());
  }

  /** Even in the logarithm, above the stated one. */
  private static double[] anySize() {
    return normed(Arrays.stream(SIZES).map(s -> s >= 1 ? 1 : 0).toArray());
  }

  private static double[] normed(double[] weights) {
    double sum = Arrays.stream(weights).sum();
    return Arrays.stream(weights).map(w -> w / sum).toArray();
  }

  /** Means of runs of values, the last run perhaps shorter. */
  private static double[] means(double[] values, int each) {
    double[] means = new double[(values.length + each - 1) / each];
    for (int k = 0; k < means.length; k++) {
      int until = Math.min(values.length, (k + 1) * each);
      means[k] = Arrays.stream(values, k * each, until).average().orElse(0);
    }
    return means;
  }
}
