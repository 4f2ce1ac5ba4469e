package rondure.stars;

/** Light of a uniform ring blurred by a Gaussian. */
final class RingBlur {
  private static final int STEPS = 128;

  private RingBlur() {}

  /**
   * Light at a distance from the centre, for a ring of unit surface brightness.
   *
   * <p>I(r) = ∫ r′ e^(−(r² + r′²)/2σ²) I₀(r r′/σ²) dr′/σ², from the inner to the outer radius, by
   * Simpson's rule over the part of the ring within 6 σ.
   */
  static double lightAt(double radius, double innerRadius, double outerRadius, double sigma) {
    double from = Math.max(innerRadius, radius - 6 * sigma);
    double to = Math.min(outerRadius, radius + 6 * sigma);
    if (!(to > from)) {
      return 0;
    }
    double step = (to - from) / STEPS;
    double sum = 0;
    for (int i = 0; i <= STEPS; i++) {
      double weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
      sum += weight * integrand(radius, from + i * step, sigma);
    }
    return sum * step / 3;
  }

  private static double integrand(double radius, double ringRadius, double sigma) {
    double variance = sigma * sigma;
    double gap = radius - ringRadius;
    double bessel = scaledBesselI0(radius * ringRadius / variance);
    return ringRadius * Math.exp(-gap * gap / (2 * variance)) * bessel / variance;
  }

  /** e⁻ᵗ I₀(t) for t ≥ 0; Abramowitz &amp; Stegun 9.8.1 and 9.8.2, error below 2e-7. */
  static double scaledBesselI0(double argument) {
    if (argument < 3.75) {
      double square = argument / 3.75 * (argument / 3.75);
      double series =
          polynomial(square, 1, 3.5156229, 3.0899424, 1.2067492, 0.2659732, 0.0360768, 0.0045813);
      return Math.exp(-argument) * series;
    }
    double inverse = 3.75 / argument;
    return polynomial(
            inverse,
            0.39894228,
            0.01328592,
            0.00225319,
            -0.00157565,
            0.00916281,
            -0.02057706,
            0.02635537,
            -0.01647633,
            0.00392377)
        / Math.sqrt(argument);
  }

  private static double polynomial(double x, double... coefficients) {
    double sum = 0;
    for (int i = coefficients.length - 1; i >= 0; i--) {
      sum = sum * x + coefficients[i];
    }
    return sum;
  }
}
