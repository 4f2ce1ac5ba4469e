package rondure.report.picture;

import rondure.base.Orientation;

/** From a square as displayed back to the square as stored. */
final class DisplayTurn {
  private DisplayTurn() {}

  /** Stored x of the display position (x, y) in a square of {@code side} pixels. */
  static double storedX(Orientation orientation, double x, double y, int side) {
    return inverse(orientation).displayX(x, y, side, side);
  }

  /** Stored y of the display position (x, y) in a square of {@code side} pixels. */
  static double storedY(Orientation orientation, double x, double y, int side) {
    return inverse(orientation).displayY(x, y, side, side);
  }

  /** Quarter turns undo each other; every other turn undoes itself. */
  private static Orientation inverse(Orientation orientation) {
    return switch (orientation) {
      case ROTATED_90_CW -> Orientation.ROTATED_270_CW;
      case ROTATED_270_CW -> Orientation.ROTATED_90_CW;
      default -> orientation;
    };
  }
}
