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
  private static final int SOME = 64;
  private static final double COARSE_SHARE = 0.2;

  private final int[] counts = new int[BINS];
  private final float[] sums = new float[BINS];

  /** Entry b holds what the bins from the first with a value to b − 1 hold together. */
  private final int[] countBelow = new int[BINS + 1];

  private final double[] sumBelow = new double[BINS + 1];
  private final double[] squareBelow = new double[BINS + 1];

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
   * @param some a few values from all over the cell, to set the histogram's range (none: taken from
   *     {@code values}); sorted on return
   * @param sigmaFloor least spread worth resolving, for instance half a code step
   */
  void measure(float[] values, int count, float[] some, double sigmaFloor) {
    this.count = count;
    this.sigmaFloor = sigmaFloor;
    setRange(some.length > 0 ? some : evenly(values, count), sigmaFloor);
    fillBins(values, count);
    addUp();
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

  private static float[] evenly(float[] values, int count) {
    float[] some = new float[Math.min(SOME, count)];
    for (int i = 0; i < some.length; i++) {
      some[i] = values[(int) ((long) i * count / some.length)];
    }
    return some;
  }

  private void setRange(float[] some, double sigmaFloor) {
    Arrays.sort(some);
    int last = some.length - 1;
    double centre = some[some.length / 2];
    double quartiles = some[(int) (0.75 * last)] - some[(int) (0.25 * last)];
    double spread = Math.max(quartiles / 1.349, Math.max(sigmaFloor, 1e-6 * Math.abs(centre)));
    spread = Math.max(spread, 1e-30);
    binWidth = 2 * HALF_RANGE_SIGMAS * spread / BINS;
    binStart = centre - HALF_RANGE_SIGMAS * spread;
  }

  private void fillBins(float[] values, int count) {
    Arrays.fill(counts, 0);
    Arrays.fill(sums, 0);
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

  private void addUp() {
    first = 0;
    last = BINS - 1;
    while (first < last && counts[first] == 0) {
      first++;
    }
    while (last > first && counts[last] == 0) {
      last--;
    }
    countBelow[first] = 0;
    sumBelow[first] = 0;
    squareBelow[first] = 0;
    for (int bin = first; bin <= last; bin++) {
      double sum = sums[bin];
      countBelow[bin + 1] = countBelow[bin] + counts[bin];
      sumBelow[bin + 1] = sumBelow[bin] + sum;
      squareBelow[bin + 1] = squareBelow[bin] + sum * sum / Math.max(1, counts[bin]);
    }
  }

  /** Median, mean and standard deviation of the bins first to last. */
  private void moments() {
    int n = countBelow[last + 1] - countBelow[first];
    if (n == 0) {
      median = binStart + binWidth * BINS / 2;
      mean = median;
      sigma = 0;
      return;
    }
    double offset = (sumBelow[last + 1] - sumBelow[first]) / n;
    double square = (squareBelow[last + 1] - squareBelow[first]) / n;
    mean = binStart + offset;
    sigma = Math.sqrt(Math.max(0, square - offset * offset));
    median = groupedMedian(n);
  }

  /** The bin in which the n values from bin first on are halved. */
  private int middleBin(int n) {
    int low = first;
    int high = last;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (2 * (countBelow[middle + 1] - countBelow[first]) < n) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private double groupedMedian(int n) {
    int bin = middleBin(n);
    int half = countBelow[bin] - countBelow[first];
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
