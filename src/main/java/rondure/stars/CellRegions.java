package rondure.stars;

import java.util.Arrays;

/** Connected regions of mesh cells, row-major, joined over their four sides. */
final class CellRegions {
  private CellRegions() {}

  /** Tells whether two neighbouring cells belong together. */
  interface Link {
    boolean joins(int first, int second);
  }

  /** Numbers the regions of usable cells from 0 in raster order; −1 for cells not usable. */
  static int[] label(int columns, int rows, boolean[] usable, Link link) {
    int[] label = new int[columns * rows];
    Arrays.fill(label, -1);
    int[] stack = new int[columns * rows];
    int next = 0;
    for (int start = 0; start < label.length; start++) {
      if (!usable[start] || label[start] >= 0) {
        continue;
      }
      int depth = 0;
      stack[depth++] = start;
      label[start] = next;
      while (depth > 0) {
        int cell = stack[--depth];
        for (int side = 0; side < 4; side++) {
          int other = neighbour(columns, rows, cell, side);
          if (other >= 0 && usable[other] && label[other] < 0 && link.joins(cell, other)) {
            label[other] = next;
            stack[depth++] = other;
          }
        }
      }
      next++;
    }
    return label;
  }

  /** True when a cell has an unmarked neighbour. */
  static boolean touches(int columns, int rows, boolean[] marked, int cell) {
    for (int side = 0; side < 4; side++) {
      int other = neighbour(columns, rows, cell, side);
      if (other >= 0 && !marked[other]) {
        return true;
      }
    }
    return false;
  }

  /** True for cells of the outermost columns and rows. */
  static boolean atBorder(int columns, int rows, int cell) {
    int column = cell % columns;
    int row = cell / columns;
    return column == 0 || row == 0 || column == columns - 1 || row == rows - 1;
  }

  /** The cell beside another, sides numbered 0 to 3; −1 outside the mesh. */
  static int neighbour(int columns, int rows, int cell, int side) {
    int column = cell % columns + (side == 0 ? 1 : side == 1 ? -1 : 0);
    int row = cell / columns + (side == 2 ? 1 : side == 3 ? -1 : 0);
    boolean inside = column >= 0 && row >= 0 && column < columns && row < rows;
    return inside ? row * columns + column : -1;
  }
}
