package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class RobustWeightsTest {

  /** 1.345 / 2 and (1 - (2/4.685)²)² (closed forms; the constants are published ones). */
  @Test
  void weightsHaveTheirClosedFormValues() {
    assertEquals(0.6725, RobustWeights.huber(2), 1e-9);
    assertEquals(0.6725, RobustWeights.huber(-2), 1e-9);
    assertEquals(1, RobustWeights.huber(1.3), 0);
    assertEquals(0.668734, RobustWeights.tukey(2), 1e-6);
    assertEquals(0, RobustWeights.tukey(5), 0);
    assertEquals(1, RobustWeights.tukey(0), 0);
  }

  /** 95.000 % of least squares on Gaussian noise, by numerical integration over the density. */
  @Test
  void bothAreNinetyFivePercentEfficientOnGaussianNoise() {
    double tukeySlope = 0;
    double tukeyPower = 0;
    double huberSlope = 0;
    double huberPower = 0;
    double step = 1e-3;
    for (int i = -10000; i <= 10000; i++) {
      double u = (i + 0.5) * step;
      double density = Math.exp(-u * u / 2) / Math.sqrt(2 * Math.PI) * step;
      tukeySlope += density * RobustWeights.tukeySlope(u, 1);
      tukeyPower += density * Math.pow(RobustWeights.tukey(u) * u, 2);
      huberSlope += density * (Math.abs(u) < RobustWeights.HUBER_CONSTANT ? 1 : 0);
      huberPower += density * Math.pow(RobustWeights.huber(u) * u, 2);
    }
    assertEquals(0.95, tukeySlope * tukeySlope / tukeyPower, 2e-5);
    assertEquals(0.95, huberSlope * huberSlope / huberPower, 2e-4);
  }

  /** The slow twin: mean of the two derivatives of w(u) u, central differences. */
  @Test
  void theSlopeInTwoDimensionsIsHalfTheDivergence() {
    double step = 1e-6;
    for (double u = 0.1; u < 6; u += 0.37) {
      double along =
          ((u + step) * RobustWeights.tukey(u + step) - (u - step) * RobustWeights.tukey(u - step))
              / (2 * step);
      double across = RobustWeights.tukey(u);
      assertEquals((along + across) / 2, RobustWeights.tukeySlope(u, 2), 1e-6);
    }
  }
}
