package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;

/**
 * Published and closed-form values of second moments, against sums over painted light.
 *
 * <p>Closed forms: variance of the uniform distribution on a line, disc and ring.
 */
class SecondMomentFactsTest {
  private static final double SIGMA = 1.2;

  /** Moments of painted light by plain sums. */
  private static Moments painted(StarCanvas.Kernel kernel, double sigma) {
    StarCanvas canvas = new StarCanvas(81, 81).gaussianStar(40.3, 39.8, 1, sigma, kernel);
    double[] sums = new double[6];
    for (int y = 0; y < 81; y++) {
      for (int x = 0; x < 81; x++) {
        double light = canvas.lightAt(x, y);
        double[] terms = {1, x, y, x * x, x * y, y * y};
        for (int i = 0; i < 6; i++) {
          sums[i] += light * terms[i];
        }
      }
    }
    double meanX = sums[1] / sums[0];
    double meanY = sums[2] / sums[0];
    return new Moments(
        sums[3] / sums[0] - meanX * meanX,
        sums[4] / sums[0] - meanX * meanY,
        sums[5] / sums[0] - meanY * meanY);
  }

  private static Moments kernelOnly(StarCanvas.Kernel kernel) {
    Moments core = painted(StarCanvas.point(), SIGMA);
    return painted(kernel, SIGMA).minus(core);
  }

  @Test
  void aLineOfSixPixelsHasThreeAlongAndNothingAcross() {
    Moments line = kernelOnly(StarCanvas.line(6, 0));
    assertEquals(3.000, line.xxPx2(), 0.003);
    assertEquals(0, line.yyPx2(), 1e-6);
    assertEquals(3.000, Moments.line(6, 0.4).majorPx2(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({"8, 0, 4.000", "8, 0.4, 4.640"})
  void aDiscHasDiameterSquaredOverSixteenAndARingTheSumOfBoth(
      double diameter, double hole, double expected) {
    Moments ring = kernelOnly(StarCanvas.disc(diameter, hole));
    assertEquals(expected, ring.xxPx2(), 0.01);
    assertEquals(expected, ring.yyPx2(), 0.01);
  }

  @Test
  void thePixelBoxAddsOneTwelfth() {
    Moments star = painted(StarCanvas.point(), 0.8);
    assertEquals(0.72333, star.xxPx2(), 1e-4);
    assertEquals(0.083333, star.yyPx2() - 0.64, 1e-4);
  }

  @Test
  void momentsOfBlursThatConvolveAdd() {
    Moments all = painted(StarCanvas.both(StarCanvas.line(6, 0), StarCanvas.disc(8, 0)), 0.9);
    assertEquals(7.81 + 1.0 / 12, all.xxPx2(), 0.01);
  }

  @Test
  void axesAndAngleFollowBertinAndArnouts1996() {
    Moments moments = Moments.ofAxes(4, 1, Math.toRadians(30));
    assertEquals(3.2500, moments.xxPx2(), 1e-4);
    assertEquals(1.2990, moments.xyPx2(), 1e-4);
    assertEquals(1.7500, moments.yyPx2(), 1e-4);
    assertEquals(30, Math.toDegrees(moments.positionAngleRad()), 1e-9);
  }

  @Test
  void anAxisRatioOfFourFifthsHasTheKnownDistortionAndShear() {
    Moments moments = Moments.ofAxes(1, 0.64, 0);
    double distortion = (moments.xxPx2() - moments.yyPx2()) / (moments.xxPx2() + moments.yyPx2());
    assertEquals(0.219512, distortion, 1e-6);
    assertEquals(0.8, moments.roundness(), 1e-12);
    double shear = (1 - moments.roundness()) / (1 + moments.roundness());
    assertEquals(0.111111, shear, 1e-6);
    assertEquals(distortion, 2 * shear / (1 + shear * shear), 1e-12);
  }

  @Test
  void aShearOfOneTwentiethIsTheDistortionInTheGalSimDocumentation() {
    // GalSim documentation, shear classes: g = 0.05 → e = 0.09975
    double shear = 0.05;
    double axisRatio = (1 - shear) / (1 + shear);
    Moments moments = Moments.ofAxes(1, axisRatio * axisRatio, 0.3);
    assertEquals(0.09975, moments.spin2Px2() / moments.meanPx2(), 5e-6);
  }

  @ParameterizedTest
  @CsvSource({"1, 1.0408", "2, 1.1547", "3, 1.3229", "4, 1.5275", "6, 2.0000"})
  void aLineOnAGaussianOfSigmaOneHasTheElongationOfItsMoments(double length, double elongation) {
    Moments moments = Moments.round(1).plus(Moments.line(length, 1.1));
    assertEquals(elongation, 1 / moments.roundness(), 1e-4);
  }

  @Test
  void aGaussianWeightIsTakenOffByInverseMatrices() {
    // C = (C_w⁻¹ − W⁻¹)⁻¹ for Gaussians; σ = 1.2, w = 1.5 → C_w = 0.878
    double weighted = 1 / (1 / 1.44 + 1 / 2.25);
    assertEquals(0.878, weighted, 5e-4);
    assertEquals(1.44, 1 / (1 / weighted - 1 / 2.25), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({"0.9, 1.0050", "0.5, 1.1419", "0.1, 1.8027"})
  void clippingAtAFractionOfThePeakWidensAGaussian(double fraction, double widening) {
    // 1 + Λ²/(2(1 + Λ)), Λ = ln(1/c): closed form, against a sum over a fine grid
    double logarithm = Math.log(1 / fraction);
    double closed = 1 + logarithm * logarithm / (2 * (1 + logarithm));
    assertEquals(widening, closed, 1e-4);
    double light = 0;
    double second = 0;
    for (double radius = 0.0005; radius < 8; radius += 0.001) {
      double value = Math.min(fraction, Math.exp(-radius * radius / 2)) * radius;
      light += value;
      second += value * radius * radius / 2;
    }
    assertEquals(widening, second / light, 2e-4);
  }

  @ParameterizedTest
  @CsvSource({"2.5, 1.13050", "3, 1.01965", "4.765, 0.79140"})
  void aMoffatProfileHasThePublishedHalfMaximumWidth(double beta, double fwhmOverAlpha) {
    // Moffat 1969, A&A 3, 455; astropy Moffat2D(gamma=1, alpha=3).fwhm = 1.019649
    double alpha = 3;
    double fwhm = fwhmOverAlpha * alpha;
    EllipticalProfile profile = EllipticalProfile.moffat(beta);
    double sigma = fwhm / Moments.FWHM_PER_SIGMA;
    assertEquals(fwhm, profile.fwhmMajorPx(Moments.round(sigma * sigma)), 2e-4 * fwhm);
    double half = Math.pow(1 + fwhm * fwhm / 4 / (alpha * alpha), -beta);
    assertEquals(0.5, half, 2e-5);
  }

  @Test
  void theSharedHalfFluxDiameterOfAGaussianIsItsFwhm() {
    Random random = new Random(4);
    int inside = 0;
    for (int i = 0; i < 200_000; i++) {
      double radius = Math.hypot(random.nextGaussian(), random.nextGaussian());
      inside += radius < Moments.FWHM_PER_SIGMA / 2 ? 1 : 0;
    }
    assertEquals(0.5, inside / 200_000.0, 0.005);
    assertTrue(Moments.FWHM_PER_SIGMA > 2.354819 && Moments.FWHM_PER_SIGMA < 2.354821);
  }
}
