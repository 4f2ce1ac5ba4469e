package rondure.stars;

import rondure.base.Moments;
import rondure.base.PixelPlane;

/**
 * Light of a star in a wide over a narrow aperture. An aperture holds all within a reach of the
 * line that the star may be drawn out to, so trails and points compare. Pixels without a value (off
 * the lattice, outside the frame) count with the fitted model.
 */
final class Wings {
  private final PixelPlane plane;
  private final Background background;
  private final double narrowPx;
  private final double widePx;

  /**
   * @param medianFwhmMinorPx the frame's median width across
   */
  Wings(PixelPlane plane, Background background, StarSettings settings, double medianFwhmMinorPx) {
    this.plane = plane;
    this.background = background;
    this.narrowPx = settings.wingNarrowFwhms() * medianFwhmMinorPx;
    this.widePx = settings.wingWideFwhms() * medianFwhmMinorPx;
  }

  /** Wide over narrow flux; 1 when the narrow aperture holds no light. */
  double ratio(ShapeFit fit) {
    Moments moments = fit.moments();
    double half = Math.sqrt(3 * Math.max(0, moments.majorPx2() - moments.minorPx2()));
    double alongX = half * Math.cos(moments.positionAngleRad());
    double alongY = half * Math.sin(moments.positionAngleRad());
    FitPixels all = FitPixels.everyPlace(fit.xPx(), fit.yPx(), alongX, alongY, widePx + 1);
    double[] model = new double[all.count() * Profile.STRIDE];
    fit.profile().evaluate(all, fit.xPx(), fit.yPx(), moments, model);
    double narrow = 0;
    double wide = 0;
    for (int i = 0; i < all.count(); i++) {
      double expected = fit.fluxCounts() * model[i * Profile.STRIDE];
      double light = lightAt((int) all.x(i), (int) all.y(i), expected);
      double away =
          FitPixels.distanceToSegment(all.x(i) - fit.xPx(), all.y(i) - fit.yPx(), alongX, alongY);
      narrow += light * inside(narrowPx - away);
      wide += light * inside(widePx - away);
    }
    return narrow > 0 ? wide / narrow : 1;
  }

  private double lightAt(int x, int y, double expected) {
    boolean outside = x < 0 || y < 0 || x >= plane.widthPx() || y >= plane.heightPx();
    if (outside || Float.isNaN(plane.at(x, y))) {
      return expected;
    }
    return plane.at(x, y) - background.levelAt(x, y);
  }

  /** Share of a pixel inside an aperture whose edge is {@code depth} px outward of its centre. */
  private static double inside(double depth) {
    return Math.max(0, Math.min(1, depth + 0.5));
  }
}
