package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;

/** Standard errors are honest: stars scatter about the truth by what the errors say. */
class ShapeErrorsTest {

  private static StarField field(
      Moments truth, StarCanvas.Kernel kernel, StarCanvas.Exposure exposure, double flux) {
    int pitch = 40 + (int) (6 * Math.sqrt(truth.majorPx2()));
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(14, pitch),
            flux,
            23,
            (on, x, y, light) -> on.gaussianStar(x, y, light, 1.1, kernel));
    return TestFrames.measure(canvas, exposure);
  }

  private static double pullSpread(
      StarField field, ToDoubleFunction<Star> value, ToDoubleFunction<Star> error, double truth) {
    double sum = 0;
    for (Star star : field.stars()) {
      double pull = (value.applyAsDouble(star) - truth) / error.applyAsDouble(star);
      sum += pull * pull;
    }
    return Math.sqrt(sum / field.stars().size());
  }

  private static void assertHonest(StarField field, Moments truth) {
    double xx = pullSpread(field, star -> star.moments().xxPx2(), Star::xxErrorPx2, truth.xxPx2());
    double xy = pullSpread(field, star -> star.moments().xyPx2(), Star::xyErrorPx2, truth.xyPx2());
    double yy = pullSpread(field, star -> star.moments().yyPx2(), Star::yyErrorPx2, truth.yyPx2());
    String pulls = "pulls xx " + xx + ", xy " + xy + ", yy " + yy;
    assertTrue(xx > 0.8 && xx < 1.3 && xy > 0.8 && xy < 1.3 && yy > 0.8 && yy < 1.3, pulls);
  }

  @ParameterizedTest
  @CsvSource({"30, -1", "100, -1", "40, 1", "100, 1"})
  void roundStarsScatterAsTheirErrorsSay(double snr, int parity) {
    Moments truth = Moments.round(1.21 + 1.0 / 12);
    StarCanvas.Exposure exposure = new StarCanvas.Exposure(100, 10, 0, parity, 31);
    double flux = TestFrames.fluxForSnr(snr, 10, truth);
    assertHonest(field(truth, StarCanvas.point(), exposure, flux), truth);
  }

  @Test
  void trailsScatterAsTheirErrorsSay() {
    Moments truth = Moments.round(1.21 + 1.0 / 12).plus(Moments.line(8, 0.5));
    StarCanvas.Exposure exposure = new StarCanvas.Exposure(100, 10, 0, -1, 31);
    double flux = TestFrames.fluxForSnr(60, 10, truth);
    assertHonest(field(truth, StarCanvas.line(8, 0.5), exposure, flux), truth);
  }

  @Test
  void photonNoiseOfTheStarIsInTheErrorsThoughNobodySaysTheGain() {
    Moments truth = Moments.round(1.21 + 1.0 / 12);
    StarCanvas.Exposure exposure = new StarCanvas.Exposure(100, 20, 2.5, -1, 31);
    assertHonest(field(truth, StarCanvas.point(), exposure, 40_000), truth);
  }

  @Test
  void scatterIsAtTheCramerRaoBoundOfFaintSky() {
    // δMxx/σ² = √8/ν, δMxy/σ² = 2/ν, σ_x = √2 σ/ν for a Gaussian star on a noisy sky, ν the
    // matched-filter signal-to-noise; closed form. 1.0 to 1.4 times the bound is expected.
    Moments truth = Moments.round(1.21 + 1.0 / 12);
    StarCanvas.Exposure exposure = new StarCanvas.Exposure(100, 10, 0, -1, 31);
    double flux = TestFrames.fluxForSnr(100, 10, truth);
    StarField field = field(truth, StarCanvas.point(), exposure, flux);
    assertEquals(100, TestFrames.median(field, Star::snr), 5);
    double error = TestFrames.median(field, Star::xxErrorPx2) / truth.xxPx2();
    assertTrue(error > 0.97 * Math.sqrt(8) / 100 && error < 1.4 * Math.sqrt(8) / 100, "" + error);
    double diagonal = TestFrames.median(field, Star::xyErrorPx2) / truth.xxPx2();
    assertTrue(diagonal > 0.97 * 2 / 100 && diagonal < 1.4 * 2 / 100, "" + diagonal);
  }

  @ParameterizedTest
  @CsvSource({"5000, 0.0506, 1.05", "20000, 0.0210, 1.00"})
  void scatterUnderPhotonNoiseIsNoMoreThanThatOfWindowedMoments(
      double flux, double windowed, double factor) {
    // Monte Carlo of de-weighted windowed moments, sky 100 e⁻, read noise 4 e⁻, σ = 1.1 px,
    // window 1.3 px (derived for this project); the bound for F = 20000 is 0.0152.
    Moments truth = Moments.round(1.21 + 1.0 / 12);
    StarCanvas.Exposure exposure = new StarCanvas.Exposure(100, Math.sqrt(116), 1, -1, 31);
    StarField field = field(truth, StarCanvas.point(), exposure, flux);
    double spread = pullSpread(field, star -> star.moments().xxPx2(), star -> 1, truth.xxPx2());
    assertTrue(spread < factor * windowed, "scatter " + spread);
  }

  @Test
  void centroidsScatterAsTheBoundSays() {
    Moments truth = Moments.round(1.21 + 1.0 / 12);
    double flux = TestFrames.fluxForSnr(100, 10, truth);
    StarCanvas canvas = new StarCanvas(800, 800);
    for (int i = 0; i < 400; i++) {
      canvas.gaussianStar(20.25 + i % 20 * 40, 20.4 + i / 20 * 40, flux, 1.1, StarCanvas.point());
    }
    StarField field = TestFrames.measure(canvas, StarCanvas.Exposure.noisy(10, 5));
    double sum = 0;
    for (Star star : field.stars()) {
      double off = (star.xPx() - 20.25) / 40;
      sum += Math.pow(40 * (off - Math.rint(off)), 2);
    }
    double bound = Math.sqrt(2) * Math.sqrt(truth.xxPx2()) / 100;
    assertEquals(bound, Math.sqrt(sum / field.stars().size()), 0.15 * bound);
  }
}
