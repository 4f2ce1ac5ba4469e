package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rondure.base.Moments;

/** Every profile is a light distribution with the moments it claims and the slopes it claims. */
class ProfileTest {
  private static final Moments SHAPE = Moments.ofAxes(9, 2.5, 0.5);

  static IntStream allProfiles() {
    return IntStream.range(0, ShapeFamilies.count());
  }

  private static boolean isMoffat(int index) {
    return index < ShapeFamilies.GAUSSIAN || index > ShapeFamilies.TRAIL;
  }

  private static FitPixels places(double reach) {
    return FitPixels.everyPlace(0.3, -0.2, 0, 0, reach);
  }

  private static double[] values(int index, FitPixels pixels, double x, double y, Moments shape) {
    double[] out = new double[pixels.count() * Profile.STRIDE];
    ShapeFamilies.profile(index).evaluate(pixels, x, y, shape, out);
    return out;
  }

  @ParameterizedTest
  @MethodSource("allProfiles")
  void lightSumsToOne(int index) {
    FitPixels pixels = places(18);
    double[] out = values(index, pixels, 0.3, -0.2, SHAPE);
    double sum = 0;
    for (int i = 0; i < pixels.count(); i++) {
      sum += out[i * Profile.STRIDE];
    }
    // Moffat wings reach further than the window; the sharpest rings have edges of 0.25 px
    assertEquals(1, sum, isMoffat(index) ? 0.15 : 4e-3);
  }

  @ParameterizedTest
  @MethodSource("allProfiles")
  void secondMomentsAreThoseAskedForUnlessTheWingsAreEndless(int index) {
    if (isMoffat(index)) {
      return;
    }
    FitPixels pixels = places(25);
    double[] out = values(index, pixels, 0.3, -0.2, SHAPE);
    double[] sums = new double[3];
    for (int i = 0; i < pixels.count(); i++) {
      double dx = pixels.x(i) - 0.3;
      double dy = pixels.y(i) + 0.2;
      sums[0] += out[i * Profile.STRIDE] * dx * dx;
      sums[1] += out[i * Profile.STRIDE] * dx * dy;
      sums[2] += out[i * Profile.STRIDE] * dy * dy;
    }
    assertEquals(SHAPE.xxPx2(), sums[0], 0.05);
    assertEquals(SHAPE.xyPx2(), sums[1], 0.05);
    assertEquals(SHAPE.yyPx2(), sums[2], 0.05);
  }

  @ParameterizedTest
  @MethodSource("allProfiles")
  void slopesAreThoseOfFiniteDifferences(int index) {
    FitPixels pixels = places(8);
    double[] out = values(index, pixels, 0.3, -0.2, SHAPE);
    double[][] shifts = {
      {1e-3, 0, 0, 0, 0},
      {0, 1e-3, 0, 0, 0},
      {0, 0, 1e-2, 0, 0},
      {0, 0, 0, 1e-2, 0},
      {0, 0, 0, 0, 1e-2}
    };
    for (int k = 0; k < 5; k++) {
      double[] by = shifts[k];
      Moments change = new Moments(by[2], by[3], by[4]);
      double[] up = values(index, pixels, 0.3 + by[0], -0.2 + by[1], SHAPE.plus(change));
      double[] down = values(index, pixels, 0.3 - by[0], -0.2 - by[1], SHAPE.minus(change));
      double step = 2 * (by[0] + by[1] + by[2] + by[3] + by[4]);
      double largest = 0;
      double worst = 0;
      for (int i = 0; i < pixels.count(); i++) {
        double difference = (up[i * Profile.STRIDE] - down[i * Profile.STRIDE]) / step;
        largest = Math.max(largest, Math.abs(difference));
        worst = Math.max(worst, Math.abs(difference - out[i * Profile.STRIDE + 1 + k]));
      }
      assertTrue(worst < 0.06 * largest, index + " slope " + k + ": " + worst + " of " + largest);
    }
  }

  @Test
  void aSharpGaussianAveragedOverPixelsIsWhatErrorFunctionsSay() {
    // light of a pixel: product of ½ (erf((d + ½)/√2σ) − erf((d − ½)/√2σ)) along both sides
    double sigma = 0.4;
    Moments shape = Moments.round(sigma * sigma + 1.0 / 12);
    FitPixels pixels = places(3);
    double[] out = new double[pixels.count() * Profile.STRIDE];
    new PixelAveraged(EllipticalProfile.gaussian()).evaluate(pixels, 0.3, -0.2, shape, out);
    for (int i = 0; i < pixels.count(); i++) {
      double expected = side(pixels.x(i) - 0.3, sigma) * side(pixels.y(i) + 0.2, sigma);
      assertEquals(expected, out[i * Profile.STRIDE], 0.004);
    }
  }

  private static double side(double offset, double sigma) {
    double scale = sigma * Math.sqrt(2);
    return 0.5 * (Erf.erf((offset + 0.5) / scale) - Erf.erf((offset - 0.5) / scale));
  }

  @Test
  void aLongTrailIsAsLongAtHalfMaximumAsItsLineAndAsWideAsItsCore() {
    Profile trail = TrailProfile.gaussian();
    Moments shape = Moments.round(1.44).plus(Moments.line(20, 0.8));
    assertEquals(20, trail.fwhmMajorPx(shape), 0.01);
    assertEquals(1.2 * Moments.FWHM_PER_SIGMA, trail.fwhmMinorPx(shape), 0.01);
  }

  @Test
  void aSharpEdgedDiscIsAsWideAtHalfMaximumAsItsDiameter() {
    // D²/16 of D = 12 and a core of σ² = 0.45: the edge stands at half of the plateau
    Moments shape = Moments.round(9 + 0.45);
    Profile disc = EllipticalProfile.disc(9 / 9.45, 0);
    assertEquals(12, disc.fwhmMajorPx(shape), 0.1);
  }

  @Test
  void theScaledBesselFunctionHasItsTabulatedValues() {
    // Abramowitz & Stegun table 9.8: e^-x I0(x) at 1, 5, 10
    assertEquals(0.4657596, RingBlur.scaledBesselI0(1), 1e-6);
    assertEquals(0.1835408, RingBlur.scaledBesselI0(5), 1e-6);
    assertEquals(0.1278333, RingBlur.scaledBesselI0(10), 1e-6);
  }

  @Test
  void theNormalIntegralHasItsTabulatedValues() {
    assertEquals(0.5, NormalTable.integralTo(0), 1e-6);
    assertEquals(0.8413447, NormalTable.integralTo(1), 2e-6);
    assertEquals(0.0227501, NormalTable.integralTo(-2), 2e-6);
  }
}
