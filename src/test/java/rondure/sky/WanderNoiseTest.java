package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WanderNoiseTest {
  private static final int TRIALS = 400;

  /**
   * The stated error of the slope against its scatter over many paths. White noise σ: σ/√Σ(t - t̄)²
   * (closed form); with steps that are as large as the noise, or ten times, the walk rules.
   */
  @ParameterizedTest
  @CsvSource({"8, 0", "20, 0", "60, 0", "20, 1", "60, 1", "20, 10", "60, 10"})
  void theSlopesErrorIsItsScatter(int count, double step) {
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
    assertEquals(1, Math.sqrt(stated / squares), step > 0 ? 0.35 : 0.5);
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
