package rondure.stars;

import rondure.base.Moments;

/**
 * Something bright at a place, with a rough size.
 *
 * @param xPx centre
 * @param yPx centre
 * @param fluxCounts light above sky
 * @param moments rough second moments, positive
 */
record Placed(double xPx, double yPx, double fluxCounts, Moments moments) {
  Placed {
    if (!moments.isPositive()) {
      throw new IllegalArgumentException("moments must be positive, were " + moments);
    }
  }

  /** Distance of a point from the centre in units of σ in that direction, √(dᵀ M⁻¹ d). */
  double distanceInSigmas(double atX, double atY) {
    double dx = atX - xPx;
    double dy = atY - yPx;
    double determinant = moments.xxPx2() * moments.yyPx2() - moments.xyPx2() * moments.xyPx2();
    double square =
        (moments.yyPx2() * dx * dx - 2 * moments.xyPx2() * dx * dy + moments.xxPx2() * dy * dy)
            / determinant;
    return Math.sqrt(Math.max(0, square));
  }
}
