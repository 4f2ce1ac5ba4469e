package rondure.stars;

import rondure.base.PixelPlane;

/** Tells light in a single photosite from a star. */
final class HotPixels {
  /** Next photosites: 8 neighbours on a full raster, 4 diagonal ones on a checkerboard. */
  private static final double NEXT_PX = 1.5;

  /** Sharpest stars: σ² about 0.2 px² with the pixel box. */
  private static final double SHARPEST_PX2 = 0.3;

  private static final double SIGNIFICANT = 4;

  private HotPixels() {}

  /**
   * True when the photosites next to the brightest one hold too little light for a star.
   *
   * <p>Two ways to be hot. Absolutely: narrower than any star across and hardly any light beside
   * the peak (the sharpest optics leave 35 % of the peak's light in the 8 neighbours, about 10 % in
   * the 4 green ones). Or against the frame: under 35 % of what its typical star would have there,
   * by at least 4 σ.
   */
  static boolean isHot(
      FitPixels pixels, ShapeFit fit, PixelPlane.Lattice lattice, Typical typical, double noise) {
    int peak = brightest(pixels);
    if (peak < 0 || !(pixels.value(peak) > 0)) {
      return false;
    }
    double[] model = new double[pixels.count() * Profile.STRIDE];
    fit.profile().evaluate(pixels, pixels.x(peak), pixels.y(peak), typical.moments(), model);
    Placed ordinary =
        new Placed(pixels.x(peak), pixels.y(peak), fit.fluxCounts(), typical.moments());
    double top = model[peak * Profile.STRIDE];
    double beside = 0;
    double expected = 0;
    int count = 0;
    for (int i = 0; i < pixels.count(); i++) {
      double away = Math.hypot(pixels.x(i) - pixels.x(peak), pixels.y(i) - pixels.y(peak));
      if (i != peak && away < NEXT_PX) {
        double sigmas = ordinary.distanceInSigmas(pixels.x(i), pixels.y(i));
        // rings are dark in the middle; stars have at most their Gaussian's light beside the peak
        double gaussian = Math.exp(-sigmas * sigmas / 2);
        expected += top > 0 ? Math.min(gaussian, model[i * Profile.STRIDE] / top) : gaussian;
        beside += pixels.value(i) - fit.offsetCounts();
        count++;
      }
    }
    double peakLight = pixels.value(peak) - fit.offsetCounts();
    double leastShare = lattice == PixelPlane.Lattice.EVERY_PIXEL ? 0.2 : 0.07;
    boolean bare = beside < leastShare * peakLight;
    double missing = expected * peakLight - beside;
    double spread = noise * Math.sqrt(count + expected * expected);
    boolean unlikeFrame =
        typical.pilotCount() >= 5
            && beside < 0.35 * expected * peakLight
            && missing > SIGNIFICANT * spread;
    return (bare && fit.moments().minorPx2() < SHARPEST_PX2)
        || (bare && !fit.settled())
        || unlikeFrame;
  }

  private static int brightest(FitPixels pixels) {
    int brightest = -1;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < pixels.count(); i++) {
      if (pixels.value(i) > most) {
        most = pixels.value(i);
        brightest = i;
      }
    }
    return brightest;
  }
}
