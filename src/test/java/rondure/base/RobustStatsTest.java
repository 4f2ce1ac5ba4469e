package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RobustStatsTest {

  /** The slow, obvious way: sort, then go between two neighbours. */
  private static double bySorting(double fraction, double[] values) {
    double[] sorted = Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
    double place = fraction * (sorted.length - 1);
    int below = (int) Math.floor(place);
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }

  @Test
  void aQuantileIsWhatSortingGives() {
    Random chance = new Random(4);
    for (int trial = 0; trial < 3000; trial++) {
      double[] values = new double[1 + chance.nextInt(trial % 3 == 0 ? 400 : 12)];
      int kinds = 1 + chance.nextInt(20); // few kinds make many ties
      Arrays.setAll(values, i -> trialValue(chance, kinds));
      values[chance.nextInt(values.length)] = 3;
      double fraction = trial % 2 == 0 ? 0.5 : chance.nextDouble();
      assertEquals(
          bySorting(fraction, values), RobustStats.percentile(fraction, values), 0, "bit for bit");
    }
  }

  private static double trialValue(Random chance, int kinds) {
    int kind = chance.nextInt(kinds);
    return kind == 7
        ? Double.NaN
        : kind == 8 ? Double.POSITIVE_INFINITY : kind < 4 ? kind : chance.nextGaussian();
  }

  @Test
  void rowsInOrderAreNoTrouble() {
    double[] rising = new double[10_001];
    Arrays.setAll(rising, i -> i);
    assertEquals(5000, RobustStats.median(rising), 0);
    assertEquals(9000, RobustStats.percentile(0.9, rising), 0);
    assertEquals(0, rising[0], "the values stay as they were");
  }

  /** Φ⁻¹(3/4) = 0.6744898: 1, 2, 3, 4, 100 deviate from 3 by 2, 1, 0, 1, 97, in the middle 1. */
  @Test
  void theDeviationIgnoresAnOutlier() {
    assertEquals(1 / 0.6744898, RobustStats.madSigma(1, 2, 3, 4, 100), 1e-6);
    assertTrue(Double.isNaN(RobustStats.median()));
  }
}
