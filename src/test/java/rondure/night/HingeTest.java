package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A level and a line that leaves it. */
class HingeTest {
  private static final int COUNT = 60;

  private static Hinge fit(int start, double slope, double noise, long seed) {
    Random random = new Random(seed);
    double[] x = new double[COUNT];
    double[] y = new double[COUNT];
    double[] sigma = new double[COUNT];
    Arrays.setAll(x, i -> i / 10.0);
    Arrays.setAll(
        y, i -> 2 + slope * Math.max(0, (i - start) / 10.0) + noise * random.nextGaussian());
    Arrays.fill(sigma, 0.05);
    return Hinge.of(x, y, sigma, 4);
  }

  @Test
  void withoutNoiseItIsExact() {
    Hinge hinge = fit(25, 0.7, 0, 1);
    assertEquals(25, hinge.start());
    assertEquals(2, hinge.level(), 1e-9);
    assertEquals(0.7, hinge.slope(), 1e-9);
    assertEquals(0, hinge.misfit(), 1e-9);
    assertEquals(25, hinge.earliest());
    assertEquals(25, hinge.latest());
  }

  /**
   * As many degrees of freedom as values less parameters: χ² near 57 (mean of the distribution).
   */
  @Test
  void withNoiseItIsNearAndItsMisfitIsThatOfTheNoise() {
    double misfit = 0;
    int held = 0;
    for (int seed = 0; seed < 100; seed++) {
      Hinge hinge = fit(25, 0.7, 0.05, seed);
      assertTrue(Math.abs(hinge.start() - 25) <= 4, "hinge at " + hinge.start());
      assertEquals(0.7, hinge.slope(), 0.1);
      misfit += hinge.misfit() / 100;
      held += hinge.earliest() <= 25 && 25 <= hinge.latest() ? 1 : 0;
    }
    // 95 of 100 are within 2 σ of one parameter (χ² with one degree of freedom); binomial 2 σ: 4.4.
    assertEquals(95, held, 5);
    assertEquals(57, misfit, 4);
  }
}
