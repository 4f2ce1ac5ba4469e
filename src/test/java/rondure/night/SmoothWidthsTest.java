package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.FDistribution;
import org.junit.jupiter.api.Test;

/**
 * Widths that vary as a tilted field of focus makes them, w² = core² + D², D linear in the place
 * (geometrical optics), against widths of unrelated lights.
 */
class SmoothWidthsTest {
  private static final int TRIES = 400;

  private static boolean tilted(int count, double scatter, long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    double[] xs = new double[count];
    double[] ys = new double[count];
    double[] widths = new double[count];
    double slope = 2 * Math.PI * chance.nextDouble();
    for (int i = 0; i < count; i++) {
      xs[i] = 900 * chance.nextDouble();
      ys[i] = 600 * chance.nextDouble();
      double along = (xs[i] - 450) / 450 * Math.cos(slope) + (ys[i] - 300) / 450 * Math.sin(slope);
      widths[i] = Math.hypot(2, 8 * along) * (1 + scatter * chance.nextGaussian());
    }
    return SmoothWidths.explain(xs, ys, widths);
  }

  /** Lights from 2 to 15 px, even in the logarithm, anywhere. */
  private static boolean unrelated(int count, long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    double[] xs = new double[count];
    double[] ys = new double[count];
    double[] widths = new double[count];
    for (int i = 0; i < count; i++) {
      xs[i] = 900 * chance.nextDouble();
      ys[i] = 600 * chance.nextDouble();
      widths[i] = 2 * Math.pow(7.5, chance.nextDouble());
    }
    return SmoothWidths.explain(xs, ys, widths);
  }

  @Test
  void aTiltedFieldOfFocusVariesSmoothly() {
    int seen = 0;
    for (int i = 0; i < TRIES; i++) {
      seen += tilted(14, 0.05, i) ? 1 : 0;
    }
    assertTrue(seen >= 0.95 * TRIES, seen + " of " + TRIES);
  }

  @Test
  void unrelatedLightsSeldomDo() {
    for (int count : new int[] {10, 14, 19}) {
      int taken = 0;
      for (int i = 0; i < TRIES; i++) {
        taken += unrelated(count, 1000L * count + i) ? 1 : 0;
      }
      assertTrue(taken <= 0.01 * TRIES, taken + " of " + TRIES + " with " + count);
    }
  }

  @Test
  void fewPointsProveNothing() {
    assertFalse(tilted(9, 0, 1));
  }

  /** scipy.stats.f.sf(4.0, 5, 8) = 0.040797, computed once with scipy. */
  @Test
  void theChanceIsThatOfFishersRatio() {
    double chance = 1 - new FDistribution(5, 8).cumulativeProbability(4.0);
    assertEquals(SCIPY, chance, 1e-5);
  }

  private static final double SCIPY = 0.040797;
}
