package rondure.report.picture;

import rondure.base.Orientation;
import rondure.base.Stamp;

/** A stamp as displayed. */
final class ShownStamp {
  private ShownStamp() {}

  /** Its values row by row in display orientation; 0 where it has none. */
  static double[] values(Stamp stamp, Orientation orientation) {
    int side = stamp.sidePx();
    double[] shown = new double[side * side];
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        int right = (int) orientation.displayX(x, y, side, side);
        int down = (int) orientation.displayY(x, y, side, side);
        float value = stamp.at(x, y);
        shown[down * side + right] = Float.isNaN(value) ? 0 : value;
      }
    }
    return shown;
  }
}
