package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import rondure.base.Moments;

/**
 * Defocus, astigmatism and coma as second moments. Formulas: D = |δz|/N and D²/16 per axis for a
 * uniform disc (geometrical optics); astigmatism M_rr = (z - z_T)²/(16 N² p²), M_tt = (z -
 * z_S)²/(16 N² p²); Seidel coma: ray (3u² + v², 2uv) over the pupil (Born &amp; Wolf, Principles of
 * Optics, from memory), whose moments are ½ and 1/6 by integration.
 */
class LensSurfaceTest {
  private static final double F_NUMBER = 2.8;
  private static final double PITCH_MICRONS = 6;

  private static double discPx(double microns) {
    return microns / (F_NUMBER * PITCH_MICRONS);
  }

  @Test
  void aDiscAddsASixteenthOfItsSquareToEachAxis() {
    Moments wide = LensSurface.FLAT.at(0.3, -0.2, discPx(30), 1);
    assertEquals(0.19930, wide.xxPx2(), 1e-5);
    assertEquals(0.19930, wide.yyPx2(), 1e-5);
    assertEquals(0, wide.xyPx2(), 1e-12);
    Moments fast = LensSurface.FLAT.at(0, 0, 10 / (1.4 * 4.3), 1);
    assertEquals(0.17246, fast.meanPx2(), 1e-5);
  }

  /**
   * Through focus the second moment is a parabola: 1/(16 N² p²) = 2.2144e-4 px² for 1 µm at N = 2.8
   * and p = 6 µm (geometrical optics, worked out apart); here with best focus at 7 µm.
   */
  @Test
  void secondMomentsThroughFocusAreAParabola() {
    for (double z = -40; z <= 40; z += 10) {
      double seen = LensSurface.FLAT.at(0, 0, discPx(z - 7), 1).meanPx2();
      assertEquals(2.2144e-4 * (z - 7) * (z - 7), seen, 1e-5 + 1e-4 * seen);
    }
  }

  /** z_T = -20 µm, z_S = 0: the values of the formula at z = 0, -10 and 20 µm. */
  @Test
  void astigmatismTurnsTheStretchByARightAngleThroughFocus() {
    // At the corner D_T = (z + 20)/(N p) and D_S = z/(N p): mean z + 10, difference 20.
    LensSurface lens = new LensSurface(0, 0, 0, discPx(20), 0);
    assertAxes(lens.at(1, 0, discPx(10), 1), 0.08858, 0);
    assertAxes(lens.at(1, 0, discPx(0), 1), 0.02214, 0.02214);
    assertAxes(lens.at(1, 0, discPx(30), 1), 0.35431, 0.08858);
    // On the other side of the medial focus the stretch lies across the radius.
    assertAxes(lens.at(1, 0, discPx(-10), 1), 0, 0.08858);
  }

  private static void assertAxes(Moments seen, double alongPx2, double acrossPx2) {
    assertEquals(alongPx2, seen.xxPx2(), 1e-5);
    assertEquals(acrossPx2, seen.yyPx2(), 1e-5);
  }

  @Test
  void comaStretchesThreeTimesAsMuchAlongTheRadius() {
    LensSurface lens = new LensSurface(0, 0, 0, 0, 1);
    Moments right = lens.at(1, 0, 0, 1);
    assertEquals(0.5, right.xxPx2(), 1e-12);
    assertEquals(1 / 6.0, right.yyPx2(), 1e-12);
    Moments below = lens.at(0, 0.5, 0, 1);
    assertEquals(0.125, below.yyPx2(), 1e-12);
    assertEquals(3, below.yyPx2() / below.xxPx2(), 1e-9);
  }

  /** Mean of both moments over a pupil of many rays, brute force. */
  @Test
  void comaMomentsAreThoseOfTracedRays() {
    double radial = 0;
    double tangential = 0;
    double mean = 0;
    int rays = 0;
    int steps = 400;
    for (int i = 0; i < steps; i++) {
      for (int j = 0; j < steps; j++) {
        double u = -1 + (i + 0.5) * 2 / steps;
        double v = -1 + (j + 0.5) * 2 / steps;
        if (u * u + v * v <= 1) {
          double along = 3 * u * u + v * v;
          mean += along;
          radial += along * along;
          tangential += 4 * u * u * v * v;
          rays++;
        }
      }
    }
    mean /= rays;
    Moments comatic = new LensSurface(0, 0, 0, 0, 1).at(1, 0, 0, 1);
    assertEquals(radial / rays - mean * mean, comatic.xxPx2(), 2e-3);
    assertEquals(tangential / rays, comatic.yyPx2(), 2e-3);
  }

  @Test
  void stoppingDownShrinksDiscsInProportion() {
    LensSurface lens = new LensSurface(1, -2, 3, 1, 0);
    Moments open = lens.at(0.5, 0.4, 2, 1);
    Moments stopped = lens.at(0.5, 0.4, 1, 0.5);
    assertEquals(open.xxPx2() / 4, stopped.xxPx2(), 1e-12);
    assertEquals(open.xyPx2() / 4, stopped.xyPx2(), 1e-12);
  }

  @Test
  void theFieldMeanOfASquareGrowthIsAThirdOfTheCorner() {
    double sum = 0;
    int steps = 200;
    for (int i = 0; i < steps; i++) {
      for (int j = 0; j < steps; j++) {
        double x = (-1 + (i + 0.5) * 2 / steps) * 0.832;
        double y = (-1 + (j + 0.5) * 2 / steps) * 0.5547;
        sum += x * x + y * y;
      }
    }
    double mean = new LensSurface(0, 0, 3, 0, 0).meanDiscPx(0, 1);
    assertEquals(3 * sum / (steps * steps), mean, 1e-3);
    assertTrue(new LensSurface(4, 4, 0, 0, 9).meanDiscPx(2, 1) == 2);
  }
}
