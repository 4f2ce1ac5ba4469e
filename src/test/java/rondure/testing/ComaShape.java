package rondure.testing;

import rondure.base.Moments;
import rondure.sim.LensPlan;
import rondure.sim.NightPlan;
import rondure.sim.StarTruth;

/**
 * What coma makes of a star, and what an ellipse fitted to it shows.
 *
 * <p>An evenly lit round pupil throws rays to c (3u² + v², 2uv): second moments c²/2 along the
 * radius and c²/6 across, third moment ⟨r² x⟩ = c³/3 about their middle (integrated over the pupil
 * with sympy: 12 ⟨ρ⁶⟩ - 28 ⟨ρ²⟩⟨ρ⁴⟩ + 16 ⟨ρ²⟩³).
 *
 * @param coefficientPx c, px
 * @param angleRad of the radius, from right towards down
 */
public record ComaShape(double coefficientPx, double angleRad) {

  /**
   * Share of the moments that a Gaussian ellipse shows whose core has the r.m.s. width 1, for c =
   * 0, 0.5, … 5, then 6, 8 and 10: least squares of scipy on images of 12 800 rays under the core,
   * pixels within 3.5 σ weighed by noise that is four times the sky's in the middle.
   */
  private static final double[] AT = {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 8, 10};

  private static final double[] ALONG = {
    1, 1.0047, 1.0004, 0.9655, 0.9001, 0.8147, 0.7224, 0.6345, 0.5591, 0.4994, 0.4537, 0.3906,
    0.3274, 0.2989
  };

  private static final double[] ACROSS = {
    1, 0.9994, 0.9947, 0.9822, 0.9564, 0.9136, 0.8560, 0.7902, 0.7244, 0.6653, 0.6154, 0.5388,
    0.4541, 0.4153
  };

  /** Of a plan's lens at a star of one of its frames. */
  static ComaShape of(NightPlan plan, int number, StarTruth star) {
    LensPlan lens = plan.lens();
    double x = star.xPx() - (plan.camera().widthPx() - 1) / 2.0;
    double y = star.yPx() - (plan.camera().heightPx() - 1) / 2.0;
    double corner = Math.hypot(plan.camera().widthPx(), plan.camera().heightPx()) / 2;
    double stop = lens.fNumber() / Groups.of(plan, number).fNumber().orElse(lens.fNumber());
    double coefficient = lens.comaPx() * stop * stop * Math.hypot(x, y) / corner;
    return new ComaShape(coefficient, Math.atan2(y, x));
  }

  /** Second moments of the rays. */
  public Moments moments() {
    double square = coefficientPx * coefficientPx;
    return Moments.ofAxes(square / 2, square / 6, angleRad);
  }

  /** What a fit shows of them beside all else in the star. */
  public Moments seenBeside(Moments even) {
    double square = coefficientPx * coefficientPx;
    double widths = Math.abs(coefficientPx) / Math.sqrt(even.meanPx2());
    return Moments.ofAxes(
        square / 2 * between(ALONG, widths), square / 6 * between(ACROSS, widths), angleRad);
  }

  /**
   * Skewness ⟨r² x⟩ / ⟨r²⟩ of a star, px outwards; all but coma is even.
   *
   * @param whole second moments, coma included
   */
  double skewPx(Moments whole) {
    return Math.pow(coefficientPx, 3) / 3 / (2 * whole.meanPx2());
  }

  private static double between(double[] shares, double widths) {
    int below = 0;
    while (below + 2 < AT.length && AT[below + 1] < widths) {
      below++;
    }
    double part = Math.min(1, (widths - AT[below]) / (AT[below + 1] - AT[below]));
    return shares[below] + part * (shares[below + 1] - shares[below]);
  }
}
