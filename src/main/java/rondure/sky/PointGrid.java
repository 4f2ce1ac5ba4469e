package rondure.sky;

import java.util.Arrays;

/** Points hashed by cells, for finding the nearest within a small radius in constant time. */
final class PointGrid {
  private static final double NEAR_PX = 2;

  private final double[] xs;
  private final double[] ys;
  private final int[] heads;
  private final int[] next;
  private final double cellPx;

  /** For radii of a pixel or two. */
  PointGrid(double[] xs, double[] ys, int count) {
    this(xs, ys, count, NEAR_PX);
  }

  /**
   * Shares the arrays; only the first {@code count} points are used.
   *
   * @param cellPx about the radius to be searched
   */
  PointGrid(double[] xs, double[] ys, int count, double cellPx) {
    this.cellPx = cellPx;
    this.xs = xs;
    this.ys = ys;
    this.heads = new int[Integer.highestOneBit(Math.max(8, count)) * 4];
    this.next = new int[count];
    Arrays.fill(heads, -1);
    for (int i = 0; i < count; i++) {
      int slot = slot(cell(xs[i]), cell(ys[i]));
      next[i] = heads[slot];
      heads[slot] = i;
    }
  }

  /** Index of the nearest point within {@code radiusPx} (inclusive), or -1 when there is none. */
  int nearest(double x, double y, double radiusPx) {
    int best = -1;
    double bestSquared = radiusPx * radiusPx;
    for (int row = cell(y - radiusPx); row <= cell(y + radiusPx); row++) {
      for (int column = cell(x - radiusPx); column <= cell(x + radiusPx); column++) {
        for (int i = heads[slot(column, row)]; i >= 0; i = next[i]) {
          double squared = (xs[i] - x) * (xs[i] - x) + (ys[i] - y) * (ys[i] - y);
          if (squared <= bestSquared) {
            best = i;
            bestSquared = squared;
          }
        }
      }
    }
    return best;
  }

  private int cell(double px) {
    return (int) Math.floor(px / cellPx);
  }

  private int slot(int column, int row) {
    int mixed = column * 0x9E3779B1 + row * 0x85EBCA77;
    return (mixed ^ (mixed >>> 15)) & (heads.length - 1);
  }
}
