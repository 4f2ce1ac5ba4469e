package rondure.blur;

import rondure.base.Moments;

/**
 * Transforms of the cores that lenses and sensors make: Gaussian, or Moffat's (1 + r²/α²)^−β with
 * stronger wings the smaller β. For half-odd β the transform is a polynomial times e^−kα: 2
 * (kα/2)^ν K_ν(kα)/Γ(ν), ν = β − 1 (Abramowitz &amp; Stegun 10.2.15 for K of half-odd order,
 * 11.4.44; from memory).
 */
enum CoreWaves {
  MOFFAT_2_5(2.5, 1.501, 1, 1),
  MOFFAT_3_5(3.5, 1.368, 1, 1, 1 / 3.0),
  MOFFAT_4_5(4.5, 1.288, 1, 1, 2 / 5.0, 1 / 15.0),
  MOFFAT_6_5(6.5, 1.197, 1, 1, 4 / 9.0, 1 / 9.0, 1 / 63.0, 1 / 945.0),
  GAUSSIAN(Double.POSITIVE_INFINITY, 1);

  private static final double PIXEL_PX2 = 1 / 12.0;

  private final double beta;

  /**
   * Second moment within 3.5 σ, where shapes end, over that of the Gaussian as wide at half maximum
   * (integrated with scipy's quad).
   */
  private final double wings;

  private final double[] polynomial;

  CoreWaves(double beta, double wings, double... polynomial) {
    this.beta = beta;
    this.wings = wings;
    this.polynomial = polynomial;
  }

  /**
   * The transform, 1 at k = 0.
   *
   * @param k wave number, rad/px
   * @param fwhmPx half-maximum width
   */
  double at(double k, double fwhmPx) {
    if (this == GAUSSIAN) {
      double phase = k * fwhmPx / Moments.FWHM_PER_SIGMA;
      return Math.exp(-phase * phase / 2);
    }
    double x = k * fwhmPx / (2 * Math.sqrt(Math.pow(2, 1 / beta) - 1));
    double sum = 0;
    for (int power = polynomial.length - 1; power >= 0; power--) {
      sum = sum * x + polynomial[power];
    }
    return sum * Math.exp(-x);
  }

  /** Second moment as shapes are measured over that of the Gaussian as wide at half maximum. */
  double wings() {
    return wings;
  }

  /**
   * Second moment as shapes are measured, the pixel included.
   *
   * @param fwhmPx half-maximum width, the pixel not included
   */
  double secondMomentPx2(double fwhmPx) {
    double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
    return wings * sigma * sigma + PIXEL_PX2;
  }
}
