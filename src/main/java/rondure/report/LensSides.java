package rondure.report;

import java.util.List;
import rondure.base.Orientation;

/**
 * A lens's slant as displayed: which side is softer.
 *
 * @param towards eighth of a turn in which the signed disc grows: 0 to the right, 2 down
 * @param discPx by how much it changes from the side away from there to the side there
 * @param errorPx standard error
 * @param widthThere of a star at that side, px, focus at its best for the whole frame
 * @param widthAway of a star at the other
 */
record LensSides(int towards, double discPx, double errorPx, double widthThere, double widthAway) {
  private static final double ALIKE = 1.05;

  /** Of a lens whose frame is shown in an orientation. */
  static LensSides of(LensModel lens, Orientation orientation) {
    double tiltX = lens.surface().tiltRightPx();
    double tiltY = lens.surface().tiltDownPx();
    double shownX = orientation.displayX(tiltX, tiltY, 1, 1);
    double shownY = orientation.displayY(tiltX, tiltY, 1, 1);
    int eighth = Math.floorMod(Math.round(Math.atan2(shownY, shownX) / (Math.PI / 4)), 8);
    List<Double> place = place(lens, orientation, eighth);
    double x = place.get(0);
    double y = place.get(1);
    return new LensSides(
        eighth,
        2 * Math.abs(tiltX * x + tiltY * y),
        2 * Math.hypot(lens.errors().tiltRightPx() * x, lens.errors().tiltDownPx() * y),
        lens.widthAt(x, y, 1),
        lens.widthAt(-x, -y, 1));
  }

  /** Stored place of the border's middle, or the corner, that lies in an eighth as displayed. */
  static List<Double> place(LensModel lens, Orientation orientation, int eighth) {
    boolean turned = orientation.swapsSides();
    double sideX = turned ? lens.sideY() : lens.sideX();
    double sideY = turned ? lens.sideX() : lens.sideY();
    double x = sideX * Math.rint(Math.cos(eighth * Math.PI / 4) * 1.2);
    double y = sideY * Math.rint(Math.sin(eighth * Math.PI / 4) * 1.2);
    return LensModel.stored(orientation, x, y);
  }

  /** Whether one side is softer than the other to the eye. */
  boolean differ() {
    return Math.max(widthThere, widthAway) >= ALIKE * Math.min(widthThere, widthAway);
  }

  /** Eighth of the softer side. */
  int softer() {
    return widthThere >= widthAway ? towards : opposite(towards);
  }

  /** The eighth across the frame from another. */
  static int opposite(int eighth) {
    return (eighth + 4) % 8;
  }

  double softerPx() {
    return Math.max(widthThere, widthAway);
  }

  double sharperPx() {
    return Math.min(widthThere, widthAway);
  }
}
