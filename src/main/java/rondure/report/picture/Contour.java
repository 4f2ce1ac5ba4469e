package rondure.report.picture;

import java.awt.geom.Path2D;
import java.util.Arrays;

/**
 * Outlines of where a grid of values lies at or above a level: marching squares with linear
 * interpolation, the outlines closed along the grid's border.
 */
final class Contour {
  private static final double BELOW = -1e9;
  private final double[] values;
  private final int side;
  private final double level;

  /** Edge by edge: the next one along the outline, -1 where there is none. */
  private final int[] next;

  private Contour(double[] values, int side, double level) {
    this.values = values;
    this.side = side;
    this.level = level;
    this.next = new int[2 * (side + 2) * (side + 2)];
    Arrays.fill(next, -1);
  }

  /**
   * The outlines, to be filled by the even-odd rule.
   *
   * @param values row by row
   * @param side of the square that they make
   * @return in grid steps, the first value at (0, 0)
   */
  static Path2D of(double[] values, int side, double level) {
    Contour contour = new Contour(values, side, level);
    for (int y = -1; y < side; y++) {
      for (int x = -1; x < side; x++) {
        contour.addCell(x, y);
      }
    }
    return contour.joined();
  }

  private double at(int x, int y) {
    return x < 0 || y < 0 || x >= side || y >= side ? BELOW : values[y * side + x];
  }

  private boolean isInside(int x, int y) {
    return at(x, y) >= level;
  }

  /** The edge from a corner to the right (0) or down (1). */
  private int edge(int x, int y, int down) {
    return 2 * ((y + 1) * (side + 2) + x + 1) + down;
  }

  /** Around a cell, each edge where one leaves the inside leads to one where one enters it. */
  private void addCell(int x, int y) {
    boolean[] inside = {
      isInside(x, y), isInside(x + 1, y), isInside(x + 1, y + 1), isInside(x, y + 1)
    };
    if (inside[0] == inside[1] && inside[1] == inside[2] && inside[2] == inside[3]) {
      return;
    }
    int[] edges = {edge(x, y, 0), edge(x + 1, y, 1), edge(x, y + 1, 0), edge(x, y, 1)};
    double middle = (at(x, y) + at(x + 1, y) + at(x + 1, y + 1) + at(x, y + 1)) / 4;
    int turn = middle >= level ? 1 : 3;
    for (int i = 0; i < 4; i++) {
      if (inside[i] && !inside[(i + 1) % 4]) {
        int enter = (i + turn) % 4;
        for (int tried = 0; tried < 4 && (inside[enter] || !inside[(enter + 1) % 4]); tried++) {
          enter = (enter + turn) % 4;
        }
        next[edges[i]] = edges[enter];
      }
    }
  }

  private Path2D joined() {
    Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    for (int start = 0; start < next.length; start++) {
      boolean first = true;
      for (int edge = start; next[edge] >= 0; first = false) {
        addPoint(path, edge, first);
        int following = next[edge];
        next[edge] = -1;
        edge = following;
      }
      if (!first) {
        path.closePath();
      }
    }
    return path;
  }

  private void addPoint(Path2D path, int edge, boolean first) {
    int x = edge / 2 % (side + 2) - 1;
    int y = edge / 2 / (side + 2) - 1;
    boolean down = edge % 2 == 1;
    double before = at(x, y);
    double after = down ? at(x, y + 1) : at(x + 1, y);
    double part = (level - before) / (after - before);
    double atX = down ? x : x + part;
    double atY = down ? y + part : y;
    if (first) {
      path.moveTo(atX, atY);
    } else {
      path.lineTo(atX, atY);
    }
  }
}
