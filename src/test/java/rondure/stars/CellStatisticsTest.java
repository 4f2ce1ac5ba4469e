package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.RobustStats;

class CellStatisticsTest {

  /** Bertin & Arnouts 1996, A&AS 117, 393; the switch to the median as photutils documents it. */
  @Test
  void skyModeFollowsThePublishedFormula() {
    assertEquals(7.0, CellStatistics.mode(10, 12, 10), 1e-12);
    assertEquals(10.0, CellStatistics.mode(10, 12, 5), 1e-12);
  }

  /** 1 / Φ⁻¹(3/4), the consistency constant of the median absolute deviation. */
  @Test
  void medianAbsoluteDeviationConstantIsThatOfTheNormalDistribution() {
    double quartile = new NormalDistribution(0, 1).inverseCumulativeProbability(0.75);
    assertEquals(1 / quartile, RobustStats.SIGMA_PER_MAD, 1e-9);
  }

  /** Fixed point of s² = Var(standard normal cut at ±3 s), by direct numerical integration. */
  @Test
  void clippingCorrectionIsTheFixedPointOfATruncatedGaussian() {
    double sigma = 1;
    for (int round = 0; round < 50; round++) {
      double sum = 0;
      double squares = 0;
      int steps = 20000;
      for (int i = 0; i < steps; i++) {
        double t = 3 * sigma * (2 * (i + 0.5) / steps - 1);
        double weight = Math.exp(-t * t / 2);
        sum += weight;
        squares += weight * t * t;
      }
      sigma = Math.sqrt(squares / sum);
    }
    assertEquals(sigma, CellStatistics.CLIPPED_SIGMA, 2e-5);
  }

  /**
   * The histogram against a slow twin that sorts and clips the values themselves; its range from as
   * many values as a cell gives (of every pixel, of a pattern), or its own choice of them. Few
   * values may set bins a quarter too wide, so that single cells clip a little elsewhere.
   */
  @ParameterizedTest
  @CsvSource({"0, 0.01", "36, 0.02", "32, 0.02"})
  void histogramAgreesWithSortingTheValues(int someCount, double noiseTolerance) {
    CellStatistics statistics = new CellStatistics();
    SplittableRandom random = new SplittableRandom(5);
    double levelDifference = 0;
    double noiseRatio = 0;
    for (int trial = 0; trial < 200; trial++) {
      float[] values = sky(random, 2048, 500 + trial, 7, 30, 0);
      statistics.measure(values, values.length, evenly(values, someCount), 0.5);
      SortedTwin twin = new SortedTwin(values);
      double difference = (statistics.level() - twin.level()) / 7;
      levelDifference += difference;
      assertEquals(0, difference, 0.03, "level, σ");
      assertEquals(1, statistics.noise() / twin.noise(), noiseTolerance, "noise ratio");
      noiseRatio += statistics.noise() / twin.noise() / 200;
    }
    assertEquals(0, levelDifference / 200, 0.005, "mean difference of level, σ");
    assertEquals(1, noiseRatio, 0.003, "mean noise ratio");
  }

  private static float[] evenly(float[] values, int count) {
    float[] some = new float[count];
    for (int i = 0; i < count; i++) {
      some[i] = values[(2 * i + 1) * values.length / (2 * count)];
    }
    return some;
  }

  @Test
  void levelIsUnbiasedAndNoiseIsRightInOrdinaryNoise() {
    CellStatistics statistics = new CellStatistics();
    SplittableRandom random = new SplittableRandom(6);
    double level = 0;
    double noise = 0;
    int trials = 400;
    for (int trial = 0; trial < trials; trial++) {
      float[] values = sky(random, 4096, 300, 5, 0, 0);
      statistics.measure(values, values.length, new float[0], 0);
      level += statistics.level() / trials;
      noise += statistics.noise() / trials;
    }
    assertEquals(300, level, 0.02 * 5);
    assertEquals(5, noise, 0.03 * 5);
  }

  /** Noise of 0.8 code steps, rounded: the true mean is not a code value. */
  @Test
  void coarseCodeStepsDoNotShiftTheLevel() {
    CellStatistics statistics = new CellStatistics();
    SplittableRandom random = new SplittableRandom(7);
    for (double truth = 20; truth < 21; truth += 0.1) {
      double level = 0;
      for (int trial = 0; trial < 50; trial++) {
        float[] values = sky(random, 4096, truth, 0.8, 0, 1);
        statistics.measure(values, values.length, new float[0], 0.5);
        level += statistics.level() / 50;
      }
      assertEquals(truth, level, 0.05, "level in code steps");
    }
  }

  @Test
  void skyClippedToBlackKeepsItsMean() {
    CellStatistics statistics = new CellStatistics();
    SplittableRandom random = new SplittableRandom(8);
    float[] values = sky(random, 4096, -0.3, 0.7, 0, 1);
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.max(0, values[i]);
      sum += values[i];
    }
    statistics.measure(values, values.length, new float[0], 0.5);
    assertTrue(statistics.atMinimum() > values.length / 2);
    assertEquals(sum / values.length, statistics.level(), 0.02);
  }

  @Test
  void oneValueOnlyHasNoNoise() {
    CellStatistics statistics = new CellStatistics();
    float[] values = new float[100];
    Arrays.fill(values, 42);
    statistics.measure(values, 100, new float[0], 0);
    assertEquals(42, statistics.level(), 1e-4);
    assertEquals(0, statistics.noise(), 1e-4);
  }

  private static float[] sky(
      SplittableRandom random, int count, double level, double sigma, int stars, double step) {
    float[] values = new float[count];
    for (int i = 0; i < count; i++) {
      double u = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
      double value = level + sigma * u * Math.cos(2 * Math.PI * random.nextDouble());
      value += i < stars ? 1000 * random.nextDouble() : 0;
      values[i] = (float) (step > 0 ? step * Math.rint(value / step) : value);
    }
    return values;
  }

  /** Level and noise the slow way. */
  private static final class SortedTwin {
    private double median;
    private double mean;
    private double sigma;

    SortedTwin(float[] values) {
      double[] kept = new double[values.length];
      for (int i = 0; i < kept.length; i++) {
        kept[i] = values[i];
      }
      Arrays.sort(kept);
      for (int round = 0; round < 50; round++) {
        median = RobustStats.median(kept);
        mean = Arrays.stream(kept).average().orElseThrow();
        double centre = mean;
        double variance =
            Arrays.stream(kept).map(v -> (v - centre) * (v - centre)).average().orElseThrow();
        sigma = Math.sqrt(variance);
        double[] inside =
            Arrays.stream(kept).filter(v -> Math.abs(v - median) <= 3 * sigma).toArray();
        if (inside.length == kept.length) {
          break;
        }
        kept = inside;
      }
    }

    double level() {
      return CellStatistics.mode(median, mean, sigma);
    }

    double noise() {
      return sigma / CellStatistics.CLIPPED_SIGMA;
    }
  }
}
