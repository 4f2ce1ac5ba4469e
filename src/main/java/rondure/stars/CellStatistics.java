package rondure.stars;

import java.util.Arrays;

/**
 * Level and noise of one mesh cell, stars left out by clipping, from a histogram in one pass.
 *
 * <p>Values are clipped at ±3σ about the median until nothing changes. The level is the mode
 * estimated as 2.5 · median − 1.5 · mean (Bertin &amp; Arnouts 1996, A&amp;AS 117, 393), or the
 * median where |mean − median| / σ ≥ 0.3. The noise is the clipped standard deviation, corrected
 * for the tails that clipping takes from a Gaussian. The median is that of grouped data: a value
 * that occurs often stands for the interval half-way to its neighbours, so that coarse code steps
 * do not shift it. Where the noise is below a code step, or a fifth of the values are the lowest
 * one (a sky clipped to black), median and mode say little and the level is the clipped mean.
 */
final class CellStatistics {
  /** Standard deviation of a Gaussian cut at ±3σ of its own width, to a fixed point. */
  static final double CLIPPED_SIGMA = 0.984846;

  private static final int BINS = 256;
  private static final double HALF_RANGE_SIGMAS = 8;
  private static final int ROUNDS = 12;
  private static final double COARSE_SHARE = 0.2;

  private final int[] counts = new int[BINS];
  private final float[] sums = new float[BINS];
  private final float[] sample = new float[64];

  private double binStart;
  private double binWidth;
  private int first;
  private int last;
  private double median;
  private double mean;
  private double sigma;
  private int count;
  private double sigmaFloor;
  private double minimum;
  private int atMinimum;

  /**
   * Measures the first {@code count} values (no NaN, count ≥ 1); read the answers from the getters.
   *
   * @param sigmaFloor least spread worth resolving, for instance half a code step
   */
  void measure(float[] values, int count, double sigmaFloor) {
    this.count = count;
    this.sigmaFloor = sigmaFloor;
    fillHistogram(values, count, sigmaFloor);
    first = 0;
    last = BINS - 1;
    for (int round = 0; round < ROUNDS; round++) {
      moments();
      double reach = 3 * Math.max(sigma, sigmaFloor);
      int lower = Math.max(first, binOf(median - reach));
      int upper = Math.min(last, binOf(median + reach));
      if (lower == first && upper == last) {
        break;
      }
      first = lower;
      last = upper;
    }
  }

  /** The sky level: mode or median; the mean where code steps are coarse or the sky is clipped. */
  double level() {
    boolean coarse = sigma <= 2 * sigmaFloor || atMinimum > COARSE_SHARE * count;
    return coarse ? mean : mode(median, mean, sigma);
  }

  /** Clipped standard deviation, corrected for the cut tails of a Gaussian. */
  double noise() {
    return sigma / CLIPPED_SIGMA;
  }

  /** The lowest value of the cell. */
  double minimum() {
    return minimum;
  }

  /** How many values are the lowest one. */
  int atMinimum() {
    return atMinimum;
  }

  /** 2.5 · median − 1.5 · mean, or the median where the two disagree by 0.3 σ or more. */
  static double mode(double median, double mean, double sigma) {
    boolean skewed = !(Math.abs(mean - median) < 0.3 * sigma);
    return skewed ? median : 2.5 * median - 1.5 * mean;
  }

  private void fillHistogram(float[] values, int count, double sigmaFloor) {
    int taken = Math.min(sample.length, count);
    for (int i = 0; i < taken; i++) {
      sample[i] = values[(int) ((long) i * count / taken)];
    }
    Arrays.sort(sample, 0, taken);
    double centre = sample[taken / 2];
    double quartiles = sample[(int) (0.75 * (taken - 1))] - sample[(int) (0.25 * (taken - 1))];
    double spread = Math.max(quartiles / 1.349, Math.max(sigmaFloor, 1e-6 * Math.abs(centre)));
    spread = Math.max(spread, 1e-30);
    binWidth = 2 * HALF_RANGE_SIGMAS * spread / BINS;
    binStart = centre - HALF_RANGE_SIGMAS * spread;
    Arrays.fill(counts, 0);
    Arrays.fill(sums, 0);
    fillBins(values, count);
  }

  private void fillBins(float[] values, int count) {
    float start = (float) binStart;
    float perBin = (float) (1 / binWidth);
    float lowest = values[0];
    int lowestCount = 0;
    for (int i = 0; i < count; i++) {
      float value = values[i];
      if (value <= lowest) {
        lowestCount = value < lowest ? 1 : lowestCount + 1;
        lowest = value;
      }
      float above = value - start;
      int bin = (int) (above * perBin);
      if (above >= 0 && bin < BINS) {
        counts[bin]++;
        sums[bin] += above;
      }
    }
    minimum = lowest;
    atMinimum = lowestCount;
  }

  private int binOf(double value) {
    double bin = Math.rint((value - binStart) / binWidth - 0.5);
    return (int) Math.max(0, Math.min(BINS - 1, bin));
  }

  /** Median, mean and standard deviation of the bins first to last. */
  private void moments() {
    long n = 0;
    double sum = 0;
    double sumOfSquares = 0;
    for (int bin = first; bin <= last; bin++) {
      if (counts[bin] > 0) {
        n += counts[bin];
        sum += sums[bin];
        sumOfSquares += (double) sums[bin] * sums[bin] / counts[bin];
      }
    }
    if (n == 0) {
      median = binStart + binWidth * BINS / 2;
      mean = median;
      sigma = 0;
      return;
    }
    mean = binStart + sum / n;
    sigma = Math.sqrt(Math.max(0, sumOfSquares / n - sum / n * (sum / n)));
    median = groupedMedian(n);
  }

  private double groupedMedian(long n) {
    long half = 0;
    int bin = first;
    while (bin < last && (half + counts[bin]) * 2 < n) {
      half += counts[bin++];
    }
    double here = (double) sums[bin] / counts[bin];
    int before = bin - 1;
    while (before >= first && counts[before] == 0) {
      before--;
    }
    int after = bin + 1;
    while (after <= last && counts[after] == 0) {
      after++;
    }
    if (before < first || after > last) {
      return binStart + here;
    }
    double from = (here + (double) sums[before] / counts[before]) / 2;
    double to = (here + (double) sums[after] / counts[after]) / 2;
    return binStart + from + (to - from) * (n / 2.0 - half) / counts[bin];
  }
}
