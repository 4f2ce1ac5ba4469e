package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Theil and Sen's slope, Mann's and Kendall's chance. */
class TrendTest {
  private static final double[] X = {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5};
  private static final double[] Y = {1.0, 1.3, 1.1, 1.6, 1.5, 2.1, 1.9, 2.4, 2.2, 2.9};

  /**
   * Slope: scipy.stats.theilslopes. Chance: scipy.stats.kendalltau gives 37 of 45 ordered pairs;
   * Kendall's normal form, one off for continuity.
   */
  @Test
  void slopeAndChanceAreScipys() {
    Trend trend = Trend.of(X, Y);
    assertEquals(0.4, trend.slope(), 1e-9);
    assertEquals(0.0012821837418053, trend.chance(), 1e-9);
  }

  @Test
  void noiseAloneSeldomHasATrend() {
    int found = 0;
    for (int seed = 0; seed < 2000; seed++) {
      Random random = new Random(seed);
      double[] x = new double[30];
      double[] y = new double[30];
      Arrays.setAll(x, i -> i);
      Arrays.setAll(y, i -> random.nextGaussian());
      found += Trend.of(x, y).chance() < 0.01 ? 1 : 0;
    }
    assertTrue(found < 2000 * 0.01 * 2 && found > 2000 * 0.01 / 3, found + " of 2000 below 1 %");
  }
}
