package rondure.report.picture;

import java.awt.geom.Path2D;
import rondure.base.Orientation;
import rondure.base.Stamp;

/** Where a stamp falls to a share of its peak: marching squares with linear interpolation. */
final class HalfMaximumOutline {
  private HalfMaximumOutline() {}

  /**
   * Line segments in frame pixels about the stamp's middle, display orientation.
   *
   * @param samplesPerPx stamp pixels per frame pixel
   */
  static Path2D of(Stamp stamp, int samplesPerPx, Orientation orientation) {
    return of(stamp, samplesPerPx, orientation, 0.5);
  }

  /**
   * The same at another share of the peak.
   *
   * @param share above 0, below 1
   */
  static Path2D of(Stamp stamp, double samplesPerPx, Orientation orientation, double share) {
    double peak = 0;
    for (int y = 0; y < stamp.sidePx(); y++) {
      for (int x = 0; x < stamp.sidePx(); x++) {
        peak = Math.max(peak, stamp.at(x, y));
      }
    }
    Path2D outline = new Path2D.Double();
    for (int y = 0; y + 1 < stamp.sidePx() && peak > 0; y++) {
      for (int x = 0; x + 1 < stamp.sidePx(); x++) {
        addCell(outline, stamp, x, y, share * peak, samplesPerPx, orientation);
      }
    }
    return outline;
  }

  /** The crossings of the level on the four sides of a cell, joined in pairs. */
  private static void addCell(
      Path2D outline,
      Stamp stamp,
      int x,
      int y,
      double level,
      double samplesPerPx,
      Orientation orientation) {
    int[][] corners = {{x, y}, {x + 1, y}, {x + 1, y + 1}, {x, y + 1}};
    int crossings = 0;
    for (int i = 0; i < 4; i++) {
      int[] from = corners[i];
      int[] to = corners[(i + 1) % 4];
      double before = stamp.at(from[0], from[1]) - level;
      double after = stamp.at(to[0], to[1]) - level;
      if (before >= 0 == after >= 0) {
        continue;
      }
      double part = before / (before - after);
      double crossX = from[0] + part * (to[0] - from[0]);
      double crossY = from[1] + part * (to[1] - from[1]);
      int side = stamp.sidePx();
      double middle = (side - 1) / 2.0;
      double shownX = (orientation.displayX(crossX, crossY, side, side) - middle) / samplesPerPx;
      double shownY = (orientation.displayY(crossX, crossY, side, side) - middle) / samplesPerPx;
      if (crossings++ % 2 == 0) {
        outline.moveTo(shownX, shownY);
      } else {
        outline.lineTo(shownX, shownY);
      }
    }
  }
}
