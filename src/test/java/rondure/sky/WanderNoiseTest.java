package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WanderNoiseTest {
  private static final int TRIALS = 400;

  /**
   * The stated error of the slope over its scatter on many paths: noise alone, steps of a walk as
   * large as the noise, ten times as large. Few values do not tell noise from a small walk, so that
   * both are met half-way: a tripod at rest is trusted too little, one that hardly wanders too
   * much.
   */
  @ParameterizedTest
  @CsvSource({
    "6, 0, 1, 1.6", "9, 0, 1, 1.6", "20, 0, 1, 1.7", "60, 0, 1, 1.8", "6, 1, 0.6, 1.2",
    "20, 1, 0.6, 1.2", "60, 1, 0.7, 1.2", "9, 10, 0.8, 1.2", "20, 10, 0.8, 1.2", "60, 10, 0.75, 1.2"
  })
  void theSlopesErrorIsItsScatter(int count, double step, double least, double most) {
    Random chance = new Random(count + 7);
    double squares = 0;
    double stated = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      double[] times = new double[count];
      double[] values = new double[count];
      double walked = 0;
      for (int i = 0; i < count; i++) {
        times[i] = 30.0 * i;
        walked += step * chance.nextGaussian();
        values[i] = walked + chance.nextGaussian();
      }
      squares += Math.pow(slope(times, values), 2) / TRIALS;
      stated += Math.pow(WanderNoise.slopeError(times, values, 1), 2) / TRIALS;
    }
    double ratio = Math.sqrt(stated / squares);
    assertTrue(ratio > least && ratio < most, "stated over seen " + ratio);
  }

  private static double slope(double[] times, double[] values) {
    double middle = 15.0 * (times.length - 1);
    double sum = 0;
    double spread = 0;
    for (int i = 0; i < times.length; i++) {
      sum += (times[i] - middle) * values[i];
      spread += (times[i] - middle) * (times[i] - middle);
    }
    return sum / spread;
  }

  /** Two values leave nothing to judge by: what was stated, and some wandering. */
  @Test
  void twoValuesGoByWhatIsStated() {
    double least = Math.sqrt(2) * 0.5 / 10;
    double error = WanderNoise.slopeError(new double[] {0, 10}, new double[] {3, 9}, 0.5);
    assertEquals(1.5, error / least, 0.6);
  }
}
