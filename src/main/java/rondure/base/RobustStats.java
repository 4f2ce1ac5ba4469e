package rondure.base;

import java.util.Arrays;

/** Order statistics over arrays of doubles; NaN is skipped; empty input answers NaN. */
public final class RobustStats {

  /** σ of a Gaussian over its median absolute deviation, 1 / Φ⁻¹(3/4) = 1.482602. */
  public static final double SIGMA_PER_MAD = 1.4826022185056018;

  private RobustStats() {}

  public static double median(double... values) {
    return percentile(0.5, values);
  }

  /** The quantile at {@code fraction} in [0, 1], linear between order statistics. */
  public static double percentile(double fraction, double... values) {
    if (!(fraction >= 0 && fraction <= 1)) {
      throw new IllegalArgumentException("fraction must be in [0, 1], was " + fraction);
    }
    double[] kept = new double[values.length];
    int count = 0;
    for (double value : values) {
      if (!Double.isNaN(value)) {
        kept[count++] = value;
      }
    }
    if (count == 0) {
      return Double.NaN;
    }
    double place = fraction * (count - 1);
    int below = (int) Math.floor(place);
    double low = Selection.partitioned(kept, count, below);
    double high = below + 1 < count ? Selection.least(kept, below + 1, count) : low;
    return low + (place - below) * (high - low);
  }

  /** Standard deviation estimated from the median absolute deviation. */
  public static double madSigma(double... values) {
    double centre = median(values);
    double[] deviations = Arrays.stream(values).map(v -> Math.abs(v - centre)).toArray();
    return SIGMA_PER_MAD * median(deviations);
  }
}
