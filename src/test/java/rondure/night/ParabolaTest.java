package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The focus curve against numpy and against the closed form of its minimum. */
class ParabolaTest {

  /**
   * numpy 1.24.2: polyfit(x, y, 2, w=1/s, cov='unscaled'), the minimum -b/2a with the delta method
   * over its covariance; computed once.
   */
  @Test
  void minimumAndErrorAreThoseOfNumpy() {
    double[] x = {0, 1, 2, 3, 4, 5, 6, 7};
    double[] y = {3.9, 2.62, 1.71, 1.12, 0.93, 1.08, 1.66, 2.49};
    double[] sigma = {.08, .05, .04, .02, .02, .02, .03, .05};
    Parabola curve = Parabola.fit(x, y, sigma).orElseThrow();
    assertEquals(0.18284302068664712, curve.curvaturePx2(), 1e-11);
    assertEquals(4.043753834509229, curve.at(), 1e-10);
    assertEquals(0.018956037208859196, curve.atError(), 1e-11);
    assertEquals(0.9257935109900775, curve.leastPx2(), 1e-10);
    assertEquals(2.597844959123888, curve.misfit(), 1e-9);
  }

  /**
   * M(z) = M0 + (z - z0)² / (16 N² p²) for a defocus z in µm: N = 2.8, p = 6 µm, z0 = 7 µm and nine
   * positions 10 µm apart with 0.05 px² each give a curvature of 2.2144e-4 px²/µm² and a minimum
   * good to 1.71 µm (numpy 1.24.2, delta method).
   */
  @Test
  void theDiscOfDefocusGivesTheCurvature() {
    double[] z = {-40, -30, -20, -10, 0, 10, 20, 30, 40};
    double[] px2 = new double[9];
    double[] sigma = new double[9];
    for (int i = 0; i < 9; i++) {
      double discPx = Math.abs(z[i] - 7) / 2.8 / 6;
      px2[i] = 0.8 + discPx * discPx / 16;
      sigma[i] = 0.05;
    }
    Parabola curve = Parabola.fit(z, px2, sigma).orElseThrow();
    assertEquals(2.2144e-4, curve.curvaturePx2(), 1e-8);
    assertEquals(7, curve.at(), 1e-8);
    assertEquals(1.7133, curve.atError(), 1e-4);
    assertEquals(0.8, curve.leastPx2(), 1e-9);
  }

  @Test
  void positionsCountFromAnywhereAndInAnyDirection() {
    double[] px2 = {2.1, 1.4, 1.0, 1.1, 1.7};
    double[] sigma = {.02, .02, .02, .02, .02};
    Parabola there = Parabola.fit(new double[] {0, 1, 2, 3, 4}, px2, sigma).orElseThrow();
    Parabola back =
        Parabola.fit(new double[] {1004, 1003, 1002, 1001, 1000}, px2, sigma).orElseThrow();
    assertEquals(there.at(), 1004 - back.at(), 1e-8);
    assertEquals(there.atError(), back.atError(), 1e-8);
  }

  @Test
  void whatHasNoMinimumHasNoCurve() {
    double[] sigma = {.1, .1, .1, .1};
    double[] x = {0, 1, 2, 3};
    assertEquals(Optional.empty(), Parabola.fit(x, new double[] {1, 2, 2, 1}, sigma));
    assertEquals(Optional.empty(), Parabola.fit(new double[] {0, 0, 1, 1}, x, sigma));
    assertEquals(
        Optional.empty(),
        Parabola.fit(Arrays.copyOf(x, 2), Arrays.copyOf(x, 2), Arrays.copyOf(sigma, 2)));
    assertTrue(Parabola.fit(x, new double[] {2, 1, 1, 2}, sigma).isPresent());
  }
}
