package rondure.sky;

import java.util.BitSet;

/**
 * Where on the plane of an ideal lens a star of a frame is near: answers in constant time, whatever
 * the radius. Cells of half the radius; those whose centre lies within it are marked.
 */
final class VoteMap {
  private static final double CELLS_PER_RADIUS = 2;

  private final double focalLengthPx;
  private final double cellPx;
  private final double leftPx;
  private final double topPx;
  private final int columns;
  private final int rows;
  private final BitSet near;

  /**
   * @param most brightest stars that count
   */
  VoteMap(FrameStars stars, int most, double focalLengthPx, double radiusPx) {
    this.focalLengthPx = focalLengthPx;
    this.cellPx = radiusPx / CELLS_PER_RADIUS;
    int count = Math.min(most, stars.count);
    double left = 0;
    double right = 0;
    double top = 0;
    double bottom = 0;
    for (int i = 0; i < count; i++) {
      left = Math.min(left, planeX(stars, i));
      right = Math.max(right, planeX(stars, i));
      top = Math.min(top, planeY(stars, i));
      bottom = Math.max(bottom, planeY(stars, i));
    }
    this.leftPx = left - 2 * radiusPx;
    this.topPx = top - 2 * radiusPx;
    this.columns = 1 + (int) ((right - leftPx + 2 * radiusPx) / cellPx);
    this.rows = 1 + (int) ((bottom - topPx + 2 * radiusPx) / cellPx);
    this.near = new BitSet(columns * rows);
    for (int i = 0; i < count; i++) {
      mark(planeX(stars, i), planeY(stars, i), radiusPx);
    }
  }

  /** Directions far off the axis of a very wide lens are brought to a steep but finite place. */
  private double planeX(FrameStars stars, int i) {
    return focalLengthPx * stars.dx[i] / Math.max(0.1, stars.dz[i]);
  }

  private double planeY(FrameStars stars, int i) {
    return focalLengthPx * stars.dy[i] / Math.max(0.1, stars.dz[i]);
  }

  private void mark(double x, double y, double radiusPx) {
    int reach = (int) CELLS_PER_RADIUS;
    int column = (int) ((x - leftPx) / cellPx);
    int row = (int) ((y - topPx) / cellPx);
    for (int r = Math.max(0, row - reach); r <= Math.min(rows - 1, row + reach); r++) {
      for (int c = Math.max(0, column - reach); c <= Math.min(columns - 1, column + reach); c++) {
        double offX = leftPx + (c + 0.5) * cellPx - x;
        double offY = topPx + (r + 0.5) * cellPx - y;
        if (offX * offX + offY * offY <= radiusPx * radiusPx) {
          near.set(r * columns + c);
        }
      }
    }
  }

  /** Whether a star is near the place that a vector's direction falls on. */
  boolean isNear(double x, double y, double z) {
    if (!(z > 0.1)) {
      return false;
    }
    double column = (focalLengthPx * x / z - leftPx) / cellPx;
    double row = (focalLengthPx * y / z - topPx) / cellPx;
    return column >= 0
        && row >= 0
        && column < columns
        && row < rows
        && near.get((int) row * columns + (int) column);
  }
}
