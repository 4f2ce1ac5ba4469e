package rondure.report.picture;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import rondure.base.Orientation;
import rondure.base.Stamp;

/** Where a stamp falls to a share of its peak. */
final class HalfMaximumOutline {
  private HalfMaximumOutline() {}

  /**
   * Outlines at half the peak, in frame pixels about the stamp's middle, display orientation.
   *
   * @param samplesPerPx stamp pixels per frame pixel
   */
  static Path2D of(Stamp stamp, double samplesPerPx, Orientation orientation) {
    return of(stamp, samplesPerPx, orientation, 0.5);
  }

  /**
   * The same at another share of the peak.
   *
   * @param share above 0, below 1
   */
  static Path2D of(Stamp stamp, double samplesPerPx, Orientation orientation, double share) {
    double[] shown = ShownStamp.values(stamp, orientation);
    double peak = 0;
    for (double value : shown) {
      peak = Math.max(peak, value);
    }
    if (!(peak > 0)) {
      return new Path2D.Double();
    }
    Path2D outline = Contour.of(shown, stamp.sidePx(), share * peak);
    double middle = (stamp.sidePx() - 1) / 2.0;
    AffineTransform toPx = AffineTransform.getScaleInstance(1 / samplesPerPx, 1 / samplesPerPx);
    toPx.translate(-middle, -middle);
    outline.transform(toPx);
    return outline;
  }
}
