package rondure.sky;

import org.hipparchus.util.FastMath;

/** The cubic q = ρ (1 + k1 ρ²) of radial distortion, undone in closed form. */
final class RadialDistortion {
  private RadialDistortion() {}

  /**
   * The ρ that lands at q, on the branch that grows from 0; NaN when q lies beyond its end.
   *
   * <p>With a = 2 / √(3 |k1|) and ρ = a sinh u (k1 above 0) or a sin u (below), the cubic is q =
   * (a/3) sinh 3u or (a/3) sin 3u (the hyperbolic and trigonometric solution of the depressed
   * cubic; Press et al., Numerical Recipes, 5.6).
   */
  static double undone(double k1, double q) {
    double a = 2 / Math.sqrt(3 * Math.abs(k1));
    double argument = 3 * q / a;
    if (argument < 1e-9) {
      return q; // the cubic term is below one part in 10^18
    }
    if (k1 > 0) {
      return a * Math.sinh(FastMath.asinh(argument) / 3);
    }
    return argument < 1 ? a * Math.sin(Math.asin(argument) / 3) : Double.NaN;
  }
}
