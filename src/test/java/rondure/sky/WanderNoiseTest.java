package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WanderNoiseTest {
  private static final int TRIALS = 150;

  /**
   * The slope's error over its stated one on many paths of three axes, both axes together: noise as
   * stated, noise ten times as large (a head that trembles), a walk whose steps are ten times the
   * noise. Where errors of both axes are alike, 63 of 100 are below one, 98 below two. Few values
   * hardly tell noise from a walk, so that both are met half-way: noise is trusted too little, a
   * walk too much.
   */
  @ParameterizedTest
  @CsvSource({
    "6, 1, 0, 0.6, 1.05",
    "9, 1, 0, 0.6, 1.05",
    "20, 1, 0, 0.6, 1.05",
    "60, 1, 0, 0.6, 1.05",
    "6, 10, 0, 0.3, 1",
    "20, 10, 0, 0.4, 1",
    "60, 10, 0, 0.4, 1",
    "6, 1, 10, 0.8, 1.6",
    "20, 1, 10, 0.8, 1.4",
    "60, 1, 10, 0.8, 1.4"
  })
  void theSlopesErrorIsItsScatter(int count, double noise, double step, double least, double most) {
    Random chance = new Random(count + 7);
    double squares = 0;
    int within = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      double[] times = new double[count];
      double[][] values = new double[3][count];
      double[] walked = new double[3];
      for (int i = 0; i < count; i++) {
        times[i] = 30.0 * i;
        for (int k = 0; k < 3; k++) {
          walked[k] += step * chance.nextGaussian();
          values[k][i] = walked[k] + noise * chance.nextGaussian();
        }
      }
      Vec errors = WanderNoise.slopeErrors(times, values, new Vec(1, 1, 1));
      double off = Math.hypot(slope(times, values[0]), slope(times, values[1]));
      double pull = off / Math.hypot(errors.x(), errors.y());
      squares += pull * pull / TRIALS;
      within += pull < 2 ? 1 : 0;
    }
    double rms = Math.sqrt(squares);
    assertTrue(rms > least && rms < most, "error over stated, r.m.s. " + rms);
    assertTrue(within > 0.88 * TRIALS, within + " of " + TRIALS + " within two");
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
    double[][] values = {{3, 9}, {0, 0}, {1, -1}};
    Vec errors = WanderNoise.slopeErrors(new double[] {0, 10}, values, new Vec(0.5, 0.5, 0.5));
    assertEquals(errors.x(), errors.y(), 1e-12);
    assertTrue(errors.x() > least && errors.x() < 8 * least, "over least " + errors.x() / least);
  }
}
