package rondure.blur;

import rondure.base.Moments;

/** The least width a star can have, whatever the lens. */
public final class BestCase {

  /** FWHM of the Airy pattern over λN. */
  public static final double AIRY_FWHM_PER_LAMBDA_N = 1.02899;

  /** Green light, µm. */
  public static final double GREEN_MICRONS = 0.55;

  private BestCase() {}

  /** Half-maximum width of the Airy disc in green light, px. */
  public static double airyFwhmPx(double fNumber, double pixelPitchMicrons) {
    if (!(fNumber > 0 && pixelPitchMicrons > 0)) {
      throw new IllegalArgumentException(
          "fNumber and pixelPitchMicrons must be > 0, were " + fNumber + ", " + pixelPitchMicrons);
    }
    return AIRY_FWHM_PER_LAMBDA_N * GREEN_MICRONS * fNumber / pixelPitchMicrons;
  }

  /**
   * Least second moment per axis, px²: the pixel box (1/12) plus the Gaussian of the Airy disc's
   * width (the moment of the Airy pattern itself diverges).
   */
  public static double leastPx2(double airyFwhmPx) {
    return 1 / 12.0 + gaussianPx2(airyFwhmPx);
  }

  /** Second moment per axis of a Gaussian of this width, px². */
  public static double gaussianPx2(double fwhmPx) {
    double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
    return sigma * sigma;
  }
}
