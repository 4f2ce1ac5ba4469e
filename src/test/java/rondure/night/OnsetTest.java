package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Where a rise begins, by made series. */
class OnsetTest {
  private static final int FRAMES = 40;

  @Test
  void aSlowRiseBeginsBeforeItIsLarge() {
    double[] values = new double[FRAMES];
    Arrays.setAll(values, i -> Math.max(0, i - 11) * 0.02);
    // Beyond 0.1 from frame 17 on.
    assertEquals(12, Onset.of(values, 0, 17, FRAMES - 1).first());
  }

  @Test
  void aSuddenRiseBeginsWhereItIs() {
    double[] values = new double[FRAMES];
    Arrays.fill(values, 17, FRAMES, 0.5);
    assertEquals(17, Onset.of(values, 0, 17, FRAMES - 1).first());
  }

  @Test
  void aRiseOutOfNoiseSaysBetweenWhichFramesItBegan() {
    Random random = new Random(3);
    double[] values = new double[FRAMES];
    Arrays.setAll(values, i -> Math.max(0, i - 14) * 0.02 + 0.03 * random.nextGaussian());
    Onset onset = Onset.of(values, 0, 20, FRAMES - 1);
    assertTrue(onset.span().earliest() <= 15 && onset.span().latest() >= 15, onset.toString());
    assertTrue(onset.span().isWide(), onset.toString());
  }
}
