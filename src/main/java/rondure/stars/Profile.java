package rondure.stars;

import rondure.base.Moments;

/**
 * A family of star images: how light falls with distance once the centre and a tensor are given.
 * For all but Moffat profiles the tensor is that of the second moments. The pixel box is part of
 * the light, so a model is sampled at pixel centres; {@link PixelAveraged} does better by the
 * sharpest stars.
 */
interface Profile {

  /** Numbers that {@link #evaluate} writes for every pixel. */
  int STRIDE = 6;

  /**
   * Where wings end for the second moments, in σ of the Gaussian of the same half-maximum width.
   */
  double WINDOW_SIGMAS = 3.5;

  /**
   * The model of a star of unit flux and its slopes at every pixel.
   *
   * @param pixels where
   * @param xPx centre, same origin as the pixels
   * @param yPx centre
   * @param moments second moments, positive
   * @param out for pixel i at {@code i * STRIDE}: value, ∂/∂x, ∂/∂y of the centre, ∂/∂Mxx, ∂/∂Mxy,
   *     ∂/∂Myy
   */
  void evaluate(FitPixels pixels, double xPx, double yPx, Moments moments, double[] out);

  /**
   * Second moments of the light for the parameters of a fit. The same for profiles whose light
   * ends; for profiles with long wings, which have no useful second moments, those of the light
   * within a window.
   *
   * @param windowSigmas where the window ends, in σ of the Gaussian of the same half-maximum width
   */
  Moments lightMoments(Moments fitted, double windowSigmas);

  /** Smallest variance along an axis that the model can take, px². */
  default double smallestPx2() {
    return 0.02;
  }

  /** Full width at half of the maximum along the long axis, px (outermost half maximum). */
  double fwhmMajorPx(Moments moments);

  /** Full width at half of the maximum across the long axis, px (outermost half maximum). */
  double fwhmMinorPx(Moments moments);
}
