package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class WingsAndTailsTest {
  private static final StarCanvas.Exposure QUIET = StarCanvas.Exposure.noisy(2, 3);

  private static StarField gaussians(StarCanvas.Kernel kernel, StarCanvas.Exposure exposure) {
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(4, 60),
            40_000,
            4,
            (on, x, y, flux) -> on.gaussianStar(x, y, flux, 1.3, kernel));
    return TestFrames.measure(canvas, exposure);
  }

  @Test
  void aGaussianHasSixteenSeventeenthsOfItsLightWithinOneFwhm() {
    // 1 / (1 − e^(−r²/2σ²)) at r = FWHM = 2.3548 σ: 1.0667; closed form
    assertEquals(
        1.0667, TestFrames.median(gaussians(StarCanvas.point(), QUIET), Star::wingRatio), 0.01);
    assertEquals(
        1.0667,
        TestFrames.median(gaussians(StarCanvas.point(), QUIET.greenOnly()), Star::wingRatio),
        0.01);
  }

  @Test
  void aMoffatProfileHasTheWingRatioOfItsClosedForm() {
    // light within r: 1 − (1 + r²/α²)^(1 − β), Moffat 1969; FWHM 3 px, β = 2.5, and the pixel box
    double alpha = 3 / 1.13050;
    double fwhm = 3.12;
    double narrow = 1 - Math.pow(1 + fwhm * fwhm / alpha / alpha, -1.5);
    double wide = 1 - Math.pow(1 + 6.25 * fwhm * fwhm / alpha / alpha, -1.5);
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(3, 80),
            60_000,
            4,
            (on, x, y, flux) -> on.moffatStar(x, y, flux, 3, 2.5, StarCanvas.point()));
    StarField field = TestFrames.measure(canvas, QUIET);
    assertEquals(wide / narrow, TestFrames.median(field, Star::wingRatio), 0.03);
  }

  @Test
  void symmetricStarsHaveNoSkewAndTailsPointTheRightWay() {
    StarField round = gaussians(StarCanvas.point(), QUIET);
    assertEquals(0, TestFrames.median(round, Star::skewXPx), 0.02);
    // four fifths of the light, and a fainter fifth 3 px further right and 1.5 px up
    StarCanvas.Kernel tailed =
        spot -> {
          spot.at(0, 0, 0.8);
          spot.at(3, -1.5, 0.2);
        };
    StarField field = gaussians(tailed, QUIET);
    double skewX = TestFrames.median(field, Star::skewXPx);
    double skewY = TestFrames.median(field, Star::skewYPx);
    assertTrue(skewX > 0.15 && skewY < -0.07, skewX + ", " + skewY);
    assertEquals(-0.5, skewY / skewX, 0.15);
  }
}
