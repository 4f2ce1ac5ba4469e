package rondure.sim;

import java.util.Arrays;

/**
 * Light on a lattice of 1/8 px over a small part of the sensor; a point is shared linearly among
 * the four nodes around it. Reused from star to star; not for several threads.
 *
 * <p>Sharing adds h²/6 per axis on average to the second moments (h = 1/8 px): {@link
 * #SHARING_PX2}, which the painter takes off the core.
 */
final class FineGrid {
  /** Nodes for one px. */
  static final int PER_PX = 8;

  /** Mean variance per axis that one linear sharing adds, px². */
  static final double SHARING_PX2 = 1.0 / (6 * PER_PX * PER_PX);

  private int leftPx;
  private int topPx;
  private int columns;
  private int rows;
  private double[] light = new double[0];

  /** Empties the grid and lays it over the given box, px. */
  void cover(double minX, double minY, double maxX, double maxY) {
    leftPx = (int) Math.floor(minX) - 1;
    topPx = (int) Math.floor(minY) - 1;
    columns = ((int) Math.ceil(maxX) + 2 - leftPx) * PER_PX;
    rows = ((int) Math.ceil(maxY) + 2 - topPx) * PER_PX;
    int size = columns * rows;
    if (light.length < size) {
      light = new double[size];
    }
    Arrays.fill(light, 0, size, 0);
  }

  void add(double x, double y, double amount) {
    double column = (x - leftPx) * PER_PX;
    double row = (y - topPx) * PER_PX;
    int left = (int) column;
    int top = (int) row;
    double right = column - left;
    double down = row - top;
    int node = top * columns + left;
    light[node] += amount * (1 - right) * (1 - down);
    light[node + 1] += amount * right * (1 - down);
    light[node + columns] += amount * (1 - right) * down;
    light[node + columns + 1] += amount * right * down;
  }

  /** Adds every node of {@code path} repeated at every node of {@code kernel}, by its light. */
  void addConvolved(FineGrid path, FineGrid kernel) {
    int count = 0;
    int[] steps = new int[kernel.columns * kernel.rows];
    double[] shares = new double[steps.length];
    for (int row = 0; row < kernel.rows; row++) {
      for (int column = 0; column < kernel.columns; column++) {
        if (kernel.at(column, row) > 0) {
          steps[count] = row * columns + column;
          shares[count++] = kernel.at(column, row);
        }
      }
    }
    int acrossPx = path.leftPx + kernel.leftPx - leftPx;
    int downPx = path.topPx + kernel.topPx - topPx;
    int origin = (downPx * columns + acrossPx) * PER_PX;
    for (int row = 0; row < path.rows; row++) {
      for (int column = 0; column < path.columns; column++) {
        double amount = path.at(column, row);
        if (amount > 0) {
          int node = origin + row * columns + column;
          for (int i = 0; i < count; i++) {
            light[node + steps[i]] += amount * shares[i];
          }
        }
      }
    }
  }

  /** Px column of the first node. */
  int leftPx() {
    return leftPx;
  }

  /** Px row of the first node. */
  int topPx() {
    return topPx;
  }

  int columns() {
    return columns;
  }

  int rows() {
    return rows;
  }

  double at(int column, int row) {
    return light[row * columns + column];
  }

  double xPx(int column) {
    return leftPx + (double) column / PER_PX;
  }

  double yPx(int row) {
    return topPx + (double) row / PER_PX;
  }
}
