package rondure.night;

import rondure.base.Moments;

/**
 * How far a picture must be made smaller for a star to look like a point.
 *
 * <p>A picture made smaller by a factor s shows each star as a sensor with pixels 1/s as wide would
 * have recorded it: the optical image shrinks, the pixel's own box does not. With the tensor M of
 * the star's half-maximum ellipse in stored pixels, M' = s² (M − I/12) + I/12 (variance of a box
 * one pixel wide: 1/12 px²). Both conditions for a point, FWHM' ≤ F along the long axis and a'/b' ≤
 * R, get easier as s falls, so each has a largest s in closed form.
 */
final class PointScale {
  /** FWHM² of a Gaussian with a pixel box's variance, px²: 8 ln 2 / 12. */
  private static final double PIXEL_PX2 = 8 * Math.log(2) / 12;

  private PointScale() {}

  /**
   * Largest factor, at most 1, at which the star is a point.
   *
   * @param star tensor of the half-maximum ellipse in stored pixels, px²
   */
  static double largest(Moments star, UseSettings settings) {
    double major = optical(star.majorPx2());
    double minor = optical(star.minorPx2());
    double width = settings.pointFwhmPx() * settings.pointFwhmPx() - PIXEL_PX2;
    double ratio = settings.pointAxisRatio() * settings.pointAxisRatio();
    double square =
        Math.min(limit(width, major), limit((ratio - 1) * PIXEL_PX2, major - ratio * minor));
    return Math.min(1, Math.sqrt(square));
  }

  /** Square of the FWHM without the pixel, px². */
  private static double optical(double variancePx2) {
    double fwhmSquare = Moments.FWHM_PER_SIGMA * Moments.FWHM_PER_SIGMA * variancePx2;
    return Math.max(0, fwhmSquare - PIXEL_PX2);
  }

  /** Largest s² with s² · growth ≤ room. */
  private static double limit(double room, double growth) {
    return growth <= 0 ? Double.POSITIVE_INFINITY : room / growth;
  }
}
