package rondure.night;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Stars that rise lose less and less light; dew and cloud begin. Closed forms. */
class AirTrendTest {
  private static final int FRAMES = 60;

  private static double[] hours() {
    double[] hours = new double[FRAMES];
    Arrays.setAll(hours, i -> i / 60.0);
    return hours;
  }

  private static double[] noisy(IntToDoubleFunction loss) {
    SplittableRandom chance = new SplittableRandom(5);
    double[] lost = new double[FRAMES];
    Arrays.setAll(lost, i -> loss.applyAsDouble(i) + 0.003 * chance.nextGaussian());
    return lost;
  }

  @Test
  void aSteadyRiseOfTheStarsIsNoLoss() {
    double[] left = AirTrend.off(hours(), noisy(i -> 0.35 * (1 - i / 60.0)));
    assertArrayEquals(new double[FRAMES], left, 0.02);
  }

  @Test
  void aCloudBeforeRisingStarsKeepsItsSize() {
    double[] lost = noisy(i -> 0.35 * (1 - i / 60.0) + (i >= 20 && i < 26 ? 0.5 : 0));
    double[] left = AirTrend.off(hours(), lost);
    assertEquals(0.5, left[22], 0.02);
    assertEquals(0, left[19], 0.02);
  }

  @Test
  void dewKeepsWhatRisingStarsHide() {
    double[] lost = noisy(i -> -0.1 * i / 60.0 + Math.max(0, i - 20) * 0.4 / 39);
    assertEquals(0.4, AirTrend.off(hours(), lost)[FRAMES - 1], 0.03);
  }

  @Test
  void moreThanAirCanTakeIsLeft() {
    double[] left = AirTrend.off(hours(), noisy(i -> 0.9 * i / 60.0));
    assertTrue(left[FRAMES - 1] > 0.45, left[FRAMES - 1] + " mag");
  }
}
