package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/** Discs found in average stars painted by brute force: mean over disc, pixel and box. */
class ProfileFitTest {
  private static final int SAMPLES = 3;
  private static final int HALF = 30;
  private static final int STARS = 40;
  private static final double FLOOR = 0.004;

  @Test
  void aDiscBehindAGaussianCoreIsFound() {
    double disc = 3.2;
    ProfileFit fit = fit(gaussian(1.6), disc, 3);
    double gauss = Math.pow(1.6 / Moments.FWHM_PER_SIGMA, 2);
    double share = disc * disc / 16 / (disc * disc / 16 + gauss);
    double true2 = fit.behind(share).chi2();
    assertTrue(true2 < 2);
    assertEquals(1.6, fit.behind(share).coreFwhmPx(), 0.08);
    assertTrue(fit.behind(0).chi2() > true2 + 20);
  }

  @Test
  void aDiscBehindAMoffatCoreIsNoWiderCore() {
    double disc = 3.6;
    ProfileFit fit = fit(moffat(2.0, 3.5), disc, 3.4);
    double gauss = Math.pow(2.0 / Moments.FWHM_PER_SIGMA, 2);
    double share = disc * disc / 16 / (disc * disc / 16 + gauss);
    assertTrue(fit.behind(share).chi2() < fit.behind(0).chi2() - 4);
  }

  @Test
  void aWideCoreIsNoDisc() {
    ProfileFit gaussian = fit(gaussian(3.2), 0, 3.3);
    assertTrue(gaussian.behind(0).chi2() < 2);
    assertTrue(gaussian.behind(0.5).chi2() > 10);
    ProfileFit moffat = fit(moffat(3.2, 3.5), 0, 3.3);
    assertTrue(moffat.behind(0).chi2() < 2);
    assertTrue(moffat.behind(0.5).chi2() > 10);
  }

  @Test
  void theSecondMomentOfAMoffatCoreEndsWhereShapesEnd() {
    // scipy's quad of r³ and r times (1 + r²/α²)^-3.5 up to 3.5 σ of the Gaussian as wide.
    assertEquals(1.368 * 4 / 5.5452 + 1 / 12.0, CoreWaves.MOFFAT_3_5.secondMomentPx2(2.0), 1e-3);
  }

  private static DoubleBinaryOperator gaussian(double fwhm) {
    double sigma = fwhm / Moments.FWHM_PER_SIGMA;
    return (x, y) -> Math.exp(-(x * x + y * y) / (2 * sigma * sigma));
  }

  private static DoubleBinaryOperator moffat(double fwhm, double beta) {
    double alpha = fwhm / (2 * Math.sqrt(Math.pow(2, 1 / beta) - 1));
    return (x, y) -> Math.pow(1 + (x * x + y * y) / (alpha * alpha), -beta);
  }

  private static ProfileFit fit(DoubleBinaryOperator core, double discPx, double fwhmPx) {
    AverageStar star =
        new AverageStar(AverageStar.Zone.WHOLE, STARS, SAMPLES, painted(core, discPx));
    return new ProfileFit(new AverageProfile(star, 3 * fwhmPx), fwhmPx, 0, FLOOR);
  }

  private static Stamp painted(DoubleBinaryOperator core, double discPx) {
    int side = 2 * HALF + 1;
    float[] values = new float[side * side];
    double[] profile = profile(core, discPx);
    for (int i = 0; i < values.length; i++) {
      double radius = Math.hypot(i % side - HALF, i / side - HALF);
      int below = (int) (10 * radius / SAMPLES);
      double part = 10 * radius / SAMPLES - below;
      values[i] =
          (float) ((profile[below] + part * (profile[below + 1] - profile[below])) / profile[0]);
    }
    return new Stamp(side, values);
  }

  /** Light every tenth of a pixel along a slanted radius. */
  private static double[] profile(DoubleBinaryOperator core, double discPx) {
    double[] light = new double[10 * (HALF * 2 / SAMPLES + 2)];
    double box = Math.sqrt(8 / (0.75 * STARS));
    for (int i = 0; i < light.length; i++) {
      double x = i / 10.0 * Math.cos(0.4);
      double y = i / 10.0 * Math.sin(0.4);
      for (int ring = 0; ring < 8; ring++) {
        double radius = discPx / 2 * Math.sqrt((ring + 0.5) / 8);
        for (int spoke = 0; spoke < 12; spoke++) {
          double dx = radius * Math.cos(2 * Math.PI * spoke / 12);
          double dy = radius * Math.sin(2 * Math.PI * spoke / 12);
          light[i] += boxed(core, x + dx, y + dy, box) / 96;
        }
      }
    }
    return light;
  }

  /** Mean over pixel and box, both taken as one square of their common variance. */
  private static double boxed(DoubleBinaryOperator core, double x, double y, double box) {
    double side = Math.sqrt(1 + box * box);
    double sum = 0;
    for (int k = 0; k < 25; k++) {
      double dx = side * ((k % 5 + 0.5) / 5 - 0.5);
      double dy = side * ((k / 5 + 0.5) / 5 - 0.5);
      sum += core.applyAsDouble(x + dx, y + dy) / 25;
    }
    return sum;
  }
}
