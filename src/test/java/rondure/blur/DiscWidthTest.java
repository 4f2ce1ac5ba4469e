package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Widths of Gaussians behind discs against the convolution summed up point by point. */
class DiscWidthTest {
  private static final double SIGMA = 0.977;
  private static final int STEPS = 400;

  @ParameterizedTest
  @ValueSource(doubles = {0.15, 0.35, 0.5, 0.65, 0.85})
  void theDiscIsFoundAgain(double share) {
    double discPx2 = SIGMA * SIGMA * share / (1 - share);
    double fwhm = 2 * halfRadius(2 * Math.sqrt(discPx2));
    // straight lines between the table's steps: 3 % of the disc's share
    assertEquals(discPx2, DiscWidth.discPx2(2.3548 * SIGMA, fwhm), 0.03 * discPx2);
    double rms = Math.sqrt(SIGMA * SIGMA + discPx2);
    assertEquals(share, DiscWidth.leastShare(fwhm / rms), 0.02);
  }

  @Test
  void starsNoWiderThanTheCoreHaveNone() {
    assertEquals(0, DiscWidth.discPx2(2.3, 2.3));
    assertEquals(0, DiscWidth.discPx2(2.3, 1.9));
    assertEquals(0, DiscWidth.leastShare(2.1));
  }

  private static double halfRadius(double discRadius) {
    double half = light(0, discRadius) / 2;
    double low = 0;
    double high = discRadius + 3 * SIGMA;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (light(middle, discRadius) > half) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Gaussian light at a distance from the middle, summed over the disc on a grid. */
  private static double light(double r, double discRadius) {
    double sum = 0;
    for (int i = 0; i < STEPS; i++) {
      double x = discRadius * ((2.0 * i + 1) / STEPS - 1);
      double chord = Math.sqrt(discRadius * discRadius - x * x);
      for (int k = 0; k < STEPS; k++) {
        double y = chord * ((2.0 * k + 1) / STEPS - 1);
        double square = (x - r) * (x - r) + y * y;
        sum += chord * Math.exp(-square / (2 * SIGMA * SIGMA));
      }
    }
    return sum;
  }
}
