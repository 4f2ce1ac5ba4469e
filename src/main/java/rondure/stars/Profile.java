package rondure.stars;

import rondure.base.Moments;

/**
 * A family of star images: how light falls with distance once the centre and the second moments are
 * given. The pixel box is part of the light, so a model is sampled at pixel centres.
 */
interface Profile {

  /** Numbers that {@link #evaluate} writes for every pixel. */
  int STRIDE = 6;

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

  /** Full width at half of the maximum along the long axis, px (outermost half maximum). */
  double fwhmMajorPx(Moments moments);

  /** Full width at half of the maximum across the long axis, px (outermost half maximum). */
  double fwhmMinorPx(Moments moments);
}
