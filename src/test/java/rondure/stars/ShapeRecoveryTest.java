package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.Moments;

/**
 * What was painted is what is measured. The truth is the painter's: variance of the core, 1/12 for
 * the pixel box, L²/12 for a line, D²(1 + ε²)/16 for a disc or ring (closed forms). Moffat cores
 * have no second moment of use: theirs is that of the light within 3.5 σ of the Gaussian of equal
 * FWHM.
 */
class ShapeRecoveryTest {
  private static final double NOISE = 10;

  private static StarCanvas.Exposure exposure(boolean greenOnly, long seed) {
    StarCanvas.Exposure full = new StarCanvas.Exposure(100, NOISE, 0, -1, seed);
    return greenOnly ? full.greenOnly() : full;
  }

  private static Moments core(double fwhmPx) {
    double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
    return Moments.round(sigma * sigma + 1.0 / 12);
  }

  private static StarField gaussians(
      double fwhmPx, StarCanvas.Kernel kernel, Moments truth, double snr, boolean greenOnly) {
    double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
    int pitch = 40 + (int) (8 * Math.sqrt(truth.majorPx2()));
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(4, pitch),
            TestFrames.fluxForSnr(snr, NOISE, truth),
            17,
            (on, x, y, flux) -> on.gaussianStar(x, y, flux, sigma, kernel));
    return TestFrames.measure(canvas, exposure(greenOnly, 5));
  }

  private static void assertWidth(double expectedPx2, double measuredPx2, double tolerance) {
    assertEquals(1, Math.sqrt(measuredPx2 / expectedPx2), tolerance);
  }

  @ParameterizedTest
  @CsvSource({
    "1.8, false",
    "2.5, false",
    "4, false",
    "6, false",
    "8, false",
    "1.8, true",
    "2.5, true",
    "5, true"
  })
  void roundGaussianStarsAreAsWideAsPaintedWithinThreePercent(double fwhmPx, boolean greenOnly) {
    Moments truth = core(fwhmPx);
    StarField field = gaussians(fwhmPx, StarCanvas.point(), truth, 200, greenOnly);
    assertTrue(field.stars().size() >= 15, () -> "only " + field.stars().size());
    assertWidth(truth.meanPx2(), TestFrames.medianMoments(field).meanPx2(), 0.01);
    double fwhm = Moments.FWHM_PER_SIGMA * Math.sqrt(truth.meanPx2());
    assertEquals(fwhm, TestFrames.median(field, Star::fwhmPx), 0.015 * fwhm);
  }

  @ParameterizedTest
  @CsvSource({
    "2.5, 1.8, 2.008",
    "2.5, 2.5, 2.652",
    "3, 2.5, 2.643",
    "3, 4, 4.090",
    "4, 2.5, 2.630"
  })
  void moffatStarsAreAsWideAtHalfMaximumAsTheyTrulyAre(double beta, double fwhmPx, double truePx) {
    // true widths include the pixel box: half maximum of the Moffat averaged over a pixel,
    // integrated numerically on an 81 x 81 grid in another language
    Moments equal = core(fwhmPx);
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(4, 64),
            TestFrames.fluxForSnr(400, NOISE, equal),
            17,
            (on, x, y, flux) -> on.moffatStar(x, y, flux, fwhmPx, beta, StarCanvas.point()));
    StarField field = TestFrames.measure(canvas, exposure(false, 5));
    assertEquals(truePx, TestFrames.median(field, Star::fwhmPx), 0.02 * truePx);
    double within = varianceWithin(3.5 * truePx / Moments.FWHM_PER_SIGMA, fwhmPx, beta);
    assertWidth(within, TestFrames.medianMoments(field).meanPx2(), 0.03);
  }

  @ParameterizedTest
  @CsvSource({
    "0.8, 0, 1.119",
    "1.0, 0, 1.249",
    "1.2, 0, 1.404",
    "1.5, 0, 1.660",
    "0.8, 2.5, 1.214",
    "1.0, 2.5, 1.348",
    "1.2, 2.5, 1.499",
    "0.8, 4, 1.178",
    "1.0, 4, 1.311",
    "1.2, 4, 1.463"
  })
  void starsSharperThanThePixelsAreAsWideAsThePixelsMakeThem(
      double fwhmPx, double beta, double truePx) {
    // true widths as above, on a 60 x 60 grid; beta 0 is the Gaussian
    double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(6, 44),
            TestFrames.fluxForSnr(300, NOISE, core(fwhmPx)),
            17,
            (on, x, y, flux) -> {
              if (beta > 0) {
                on.moffatStar(x, y, flux, fwhmPx, beta, StarCanvas.point());
              } else {
                on.gaussianStar(x, y, flux, sigma, StarCanvas.point());
              }
            });
    StarField field = TestFrames.measure(canvas, exposure(false, 5));
    assertTrue(field.stars().size() >= 30, () -> "only " + field.stars().size());
    assertEquals(truePx, TestFrames.median(field, Star::fwhmPx), 0.03 * truePx);
    double round = TestFrames.median(field, star -> star.fwhmMajorPx() / star.fwhmMinorPx());
    assertEquals(1, round, 0.03);
  }

  /**
   * Variance per axis of painted Moffat light inside a radius, over the share 0.9866 that a
   * Gaussian keeps of its variance inside 3.5 σ (closed form, 1 − h/(eʰ − 1) with h = 3.5²/2).
   */
  private static double varianceWithin(double radiusPx, double fwhmPx, double beta) {
    StarCanvas canvas =
        new StarCanvas(61, 61).moffatStar(30.3, 29.8, 1, fwhmPx, beta, StarCanvas.point());
    double light = 0;
    double second = 0;
    for (int i = 0; i < 61 * 61; i++) {
      double square = Math.pow(i % 61 - 30.3, 2) + Math.pow(i / 61 - 29.8, 2);
      if (square < radiusPx * radiusPx) {
        light += canvas.lightAt(i % 61, i / 61);
        second += canvas.lightAt(i % 61, i / 61) * square / 2;
      }
    }
    return second / light / 0.9866;
  }

  @ParameterizedTest
  @CsvSource({
    "3, 1.8, 0",
    "3, 1.8, 45",
    "3, 3, 30",
    "6, 1.8, 30",
    "6, 4, 45",
    "12, 2.5, 70",
    "20, 2, 120",
    "30, 1.8, 30",
    "30, 4, 45",
    "30, 1.8, 90"
  })
  void trailsAreAsLongAsPaintedWithinFivePercent(
      double lengthPx, double fwhmPx, double angleDegrees) {
    double angle = Math.toRadians(angleDegrees);
    Moments truth = core(fwhmPx).plus(Moments.line(lengthPx, angle));
    for (boolean greenOnly : new boolean[] {false, true}) {
      StarField field = gaussians(fwhmPx, StarCanvas.line(lengthPx, angle), truth, 200, greenOnly);
      Moments measured = TestFrames.medianMoments(field);
      assertTrue(field.stars().size() >= 15, () -> "only " + field.stars().size());
      assertEquals(lengthPx, TestFrames.lengthPx(measured), 0.03 * lengthPx);
      double turn = Math.toDegrees(measured.positionAngleRad() - angle);
      assertEquals(0, Math.sin(Math.toRadians(turn)), 0.03);
      double across = TestFrames.median(field, star -> star.moments().minorPx2());
      assertWidth(core(fwhmPx).meanPx2(), across, 0.03);
    }
  }

  @Test
  void trailsOfCoresWithWingsKeepTheirLength() {
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(3, 72),
            TestFrames.fluxForSnr(300, NOISE, core(2.2).plus(Moments.line(8, 0.7))),
            17,
            (on, x, y, flux) -> on.moffatStar(x, y, flux, 2.2, 3, StarCanvas.line(8, 0.7)));
    StarField field = TestFrames.measure(canvas, exposure(false, 5));
    Moments measured = TestFrames.medianMoments(field);
    assertEquals(8, TestFrames.lengthPx(measured), 0.02 * 8);
    double across = varianceWithin(3.5 * 2.32 / Moments.FWHM_PER_SIGMA, 2.2, 3);
    assertWidth(across, measured.minorPx2(), 0.05);
  }

  @Test
  void aSixtyPixelTrailIsOneStarOfThatLength() {
    Moments truth = core(2.5).plus(Moments.line(60, 0.4));
    StarField field = gaussians(2.5, StarCanvas.line(60, 0.4), truth, 250, false);
    assertEquals(16, field.stars().size());
    assertEquals(60, TestFrames.lengthPx(TestFrames.medianMoments(field)), 0.6);
  }

  @ParameterizedTest
  @CsvSource({"4, 0", "6, 0", "8, 0", "12, 0", "16, 0", "20, 0", "6, 0.4", "8, 0.4", "16, 0.4"})
  void discsAndRingsAreAsWideAsPaintedWithinThreePercent(double diameterPx, double hole) {
    double ring = diameterPx * diameterPx * (1 + hole * hole) / 16;
    Moments truth = core(2.1).plus(Moments.round(ring));
    StarField field = gaussians(2.1, StarCanvas.disc(diameterPx, hole), truth, 150, false);
    assertTrue(field.stars().size() >= 15, () -> "only " + field.stars().size());
    assertWidth(truth.meanPx2(), TestFrames.medianMoments(field).meanPx2(), 0.03);
    if (diameterPx >= 8) {
      // wide discs: the rim stands at half of the plateau, the hole does not count
      assertEquals(diameterPx, TestFrames.median(field, Star::fwhmPx), 0.05 * diameterPx);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.6, 1.5})
  void ellipsesThatAreNoTrailsKeepTheirAxes(double stretchPx) {
    Moments truth = core(2.2).plus(Moments.ofAxes(stretchPx * stretchPx, 0, 0.4));
    StarField field = gaussians(2.2, StarCanvas.stretch(stretchPx, 0.4), truth, 200, false);
    Moments measured = TestFrames.medianMoments(field);
    assertWidth(truth.majorPx2(), measured.majorPx2(), 0.01);
    assertWidth(truth.minorPx2(), measured.minorPx2(), 0.01);
  }

  @Test
  void defocusedTrailsAreMeasuredWithinFourPercent() {
    StarCanvas.Kernel kernel = StarCanvas.both(StarCanvas.disc(6, 0), StarCanvas.line(6, 0.4));
    Moments truth = core(2.1).plus(Moments.round(36.0 / 16)).plus(Moments.line(6, 0.4));
    Moments measured = TestFrames.medianMoments(gaussians(2.1, kernel, truth, 150, false));
    assertWidth(truth.majorPx2(), measured.majorPx2(), 0.04);
    assertWidth(truth.minorPx2(), measured.minorPx2(), 0.04);
  }
}
