package rondure.stars;

/**
 * The third-moment vector of a star, ⟨r² d⟩ / ⟨r²⟩, px, about the windowed centroid. Every pixel of
 * the fit counts with its light above the fitted sky times a Gaussian weight of the star's own
 * shape, 2.1 σ wide.
 *
 * @param xPx along x, positive when the longer tail points right
 * @param yPx along y, positive when the longer tail points down
 */
record Tails(double xPx, double yPx) {
  private static final double WINDOW_SIGMAS = 2.1;

  static Tails of(FitPixels pixels, ShapeFit fit) {
    Placed star = ProfileChoice.startOf(fit);
    double light = 0;
    double firstX = 0;
    double firstY = 0;
    double[] weighted = new double[pixels.count()];
    for (int i = 0; i < pixels.count(); i++) {
      double sigmas = star.distanceInSigmas(pixels.x(i), pixels.y(i)) / WINDOW_SIGMAS;
      weighted[i] = Math.exp(-sigmas * sigmas / 2) * (pixels.value(i) - fit.offsetCounts());
      light += weighted[i];
      firstX += weighted[i] * (pixels.x(i) - fit.xPx());
      firstY += weighted[i] * (pixels.y(i) - fit.yPx());
    }
    return light > 0
        ? about(pixels, weighted, fit.xPx() + firstX / light, fit.yPx() + firstY / light)
        : new Tails(0, 0);
  }

  private static Tails about(FitPixels pixels, double[] weighted, double xPx, double yPx) {
    double second = 0;
    double thirdX = 0;
    double thirdY = 0;
    for (int i = 0; i < pixels.count(); i++) {
      double dx = pixels.x(i) - xPx;
      double dy = pixels.y(i) - yPx;
      double square = weighted[i] * (dx * dx + dy * dy);
      second += square;
      thirdX += square * dx;
      thirdY += square * dy;
    }
    return second > 0 ? new Tails(thirdX / second, thirdY / second) : new Tails(0, 0);
  }
}
