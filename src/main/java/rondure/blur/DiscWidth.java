package rondure.blur;

import rondure.base.Moments;

/**
 * How a disc of defocus widens a Gaussian core at half maximum, which wings of the star hardly
 * touch, other than its second moment.
 *
 * <p>Half-maximum width of core ⊗ disc over that of the core, by the disc's share s = D²/16 of the
 * second moment: light at radius r is ∫ exp(−(r² + t²) / 2σ²) I0(r t / σ²) t dt over the disc, its
 * half-maximum radius found with scipy (Gauss-Legendre of 400 points, {@code ive}, {@code brentq}).
 */
final class DiscWidth {
  /** Width over the core's at shares 0, 0.05, … 0.95. */
  private static final double[] WIDENING = {
    1, 1.0267, 1.0574, 1.0928, 1.1341, 1.1826, 1.2401, 1.3088, 1.3915, 1.4918, 1.6142, 1.7641,
    1.9484, 2.176, 2.4591, 2.8176, 3.2885, 3.9527, 5.0243, 7.3552
  };

  /** Half-maximum width over r.m.s. width, the disc included, at the same shares. */
  private static final double[] WIDTH_OVER_SIGMA = {
    2.3548, 2.3565, 2.3622, 2.3726, 2.3887, 2.4118, 2.4432, 2.4847, 2.5381, 2.6052,
    2.6877, 2.7867, 2.9018, 3.0314, 3.1717, 3.3175, 3.4632, 3.6049, 3.7414, 3.8729
  };

  private static final double STEP = 0.05;

  private DiscWidth() {}

  /**
   * D²/16 of the disc that widens a core to a width, px²: 0 where that is no wider.
   *
   * @param coreFwhmPx half-maximum width of the core
   * @param fwhmPx half-maximum width of the star
   */
  static double discPx2(double coreFwhmPx, double fwhmPx) {
    double share = share(fwhmPx / coreFwhmPx);
    double sigma = coreFwhmPx / Moments.FWHM_PER_SIGMA;
    return sigma * sigma * share / (1 - share);
  }

  /** The disc's share of the second moment; at most 0.95. */
  private static double share(double widening) {
    return at(widening, WIDENING);
  }

  /**
   * The least share of a star's second moment that is a disc's: that behind a Gaussian core; behind
   * one with wings it takes more to make the star as flat.
   *
   * @param widthOverSigma half-maximum width over r.m.s. width
   */
  static double leastShare(double widthOverSigma) {
    return at(widthOverSigma, WIDTH_OVER_SIGMA);
  }

  private static double at(double value, double[] table) {
    for (int i = 1; i < table.length; i++) {
      if (value < table[i]) {
        double part = (value - table[i - 1]) / (table[i] - table[i - 1]);
        return Math.max(0, STEP * (i - 1 + part));
      }
    }
    return STEP * (table.length - 1);
  }
}
