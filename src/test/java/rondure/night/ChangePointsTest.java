package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Changes of level in noisy series. */
class ChangePointsTest {
  private static final double RATE = 1e-5;

  private static double[] noise(int count, long seed) {
    Random random = new Random(seed);
    double[] values = new double[count];
    Arrays.setAll(values, i -> random.nextGaussian());
    return values;
  }

  private static double[] ones(int count) {
    double[] ones = new double[count];
    Arrays.fill(ones, 1);
    return ones;
  }

  /** The stated rate is a chance for each place: 100,000 places may show one or two. */
  @Test
  void quietSeriesKeepOneLevel() {
    int changes = 0;
    for (int seed = 0; seed < 200; seed++) {
      changes += ChangePoints.of(noise(500, seed), ones(500), RATE).size() - 1;
    }
    assertTrue(changes <= 2, changes + " changes in 100,000 quiet values");
  }

  @Test
  void aStepIsFoundWhereItIs() {
    for (int seed = 0; seed < 50; seed++) {
      double[] values = noise(200, seed);
      for (int i = 120; i < 200; i++) {
        values[i] += 8;
      }
      assertEquals(List.of(0, 120), ChangePoints.of(values, ones(200), RATE), "seed " + seed);
    }
  }

  @Test
  void aShortSpellHasABeginningAndAnEnd() {
    double[] values = noise(100, 3);
    for (int i = 40; i < 43; i++) {
      values[i] += 12;
    }
    assertEquals(List.of(0, 40, 43), ChangePoints.of(values, ones(100), RATE));
  }

  @Test
  void anEmptySeriesHasNone() {
    assertEquals(List.of(), ChangePoints.of(new double[0], new double[0], RATE));
  }
}
