package rondure.stars;

import java.util.Arrays;

/**
 * One value per cell of a coarse mesh over a raster, read linearly between the cells' centres.
 *
 * <p>Cells are square; the last column and row may be cut by the raster's edge, and then their
 * centre is the centre of what is left. Beyond the outermost centres the values go on in a straight
 * line, or stay as they are ({@link #flatAtBorder}). Coordinates: centre of the first pixel at (0,
 * 0).
 */
final class MeshGrid {
  private final int cellPx;
  private final int columns;
  private final int rows;
  private final double[] centresX;
  private final double[] centresY;
  private final float[] values;
  private final boolean flatAtBorder;

  MeshGrid(int widthPx, int heightPx, int cellPx, float[] values) {
    this.cellPx = cellPx;
    this.columns = cellsAlong(widthPx, cellPx);
    this.rows = cellsAlong(heightPx, cellPx);
    this.centresX = centres(widthPx, cellPx);
    this.centresY = centres(heightPx, cellPx);
    if (values.length != columns * rows) {
      throw new IllegalArgumentException(
          values.length + " values do not make " + columns + " x " + rows + " cells");
    }
    this.values = values;
    this.flatAtBorder = false;
  }

  /** Number of cells along a side, the last one possibly cut. */
  static int cellsAlong(int sidePx, int cellPx) {
    return (sidePx + cellPx - 1) / cellPx;
  }

  private static double[] centres(int sidePx, int cellPx) {
    double[] centres = new double[cellsAlong(sidePx, cellPx)];
    for (int i = 0; i < centres.length; i++) {
      int end = Math.min(sidePx, (i + 1) * cellPx);
      centres[i] = (i * cellPx + end - 1) / 2.0;
    }
    return centres;
  }

  int columns() {
    return columns;
  }

  int rows() {
    return rows;
  }

  float cell(int column, int row) {
    return values[row * columns + column];
  }

  float cell(int index) {
    return values[index];
  }

  /**
   * How much the values change per cell at a cell along a direction: the mean of the steps to its
   * two neighbours, at most twice the gentler one, and 0 where they point opposite ways.
   */
  double steadyStep(int column, int row, int stepX, int stepY) {
    boolean before = column >= stepX && row >= stepY;
    boolean after = column + stepX < columns && row + stepY < rows;
    double here = cell(column, row);
    double back = before ? here - cell(column - stepX, row - stepY) : 0;
    double forth = after ? cell(column + stepX, row + stepY) - here : back;
    back = before ? back : forth;
    double gentler = Math.min(Math.abs(back), Math.abs(forth));
    return back * forth <= 0 ? 0 : Math.min(2 * gentler, Math.abs(back + forth) / 2);
  }

  int size() {
    return values.length;
  }

  /** A grid of the same cells with other values. */
  MeshGrid with(float[] otherValues) {
    return new MeshGrid(this, otherValues, flatAtBorder);
  }

  /** The same values, but constant beyond the outermost centres: what must not run below zero. */
  MeshGrid flatAtBorder() {
    return new MeshGrid(this, values, true);
  }

  private MeshGrid(MeshGrid like, float[] values, boolean flatAtBorder) {
    this.cellPx = like.cellPx;
    this.columns = like.columns;
    this.rows = like.rows;
    this.centresX = like.centresX;
    this.centresY = like.centresY;
    this.values = values;
    this.flatAtBorder = flatAtBorder;
  }

  /** The value at a position, linear between cell centres. */
  float at(double xPx, double yPx) {
    int column = below(centresX, xPx);
    int row = below(centresY, yPx);
    float acrossX = share(centresX, column, xPx);
    float acrossY = share(centresY, row, yPx);
    float upper = between(row, column, acrossX);
    float lower = rows == 1 ? upper : between(row + 1, column, acrossX);
    return upper + acrossY * (lower - upper);
  }

  private float between(int row, int column, float share) {
    float left = values[row * columns + column];
    float right = columns == 1 ? left : values[row * columns + column + 1];
    return left + share * (right - left);
  }

  private int below(double[] centres, double place) {
    int guess = (int) Math.floor((place - centres[0]) / cellPx);
    return Math.max(0, Math.min(guess, centres.length - 2));
  }

  private float share(double[] centres, int index, double place) {
    if (centres.length == 1) {
      return 0;
    }
    double share = (place - centres[index]) / (centres[index + 1] - centres[index]);
    return (float) (flatAtBorder ? Math.max(0, Math.min(1, share)) : share);
  }

  /** The row of cells whose centres lie next above a position, or the first or last but one. */
  int rowAbove(double yPx) {
    return below(centresY, yPx);
  }

  /** How far a position lies from the centres of that row to those of the next, as a share. */
  float shareBelow(int rowAbove, double yPx) {
    return share(centresY, rowAbove, yPx);
  }

  /** The column of cells whose centres lie next left of a position, as {@link #rowAbove}. */
  int columnLeft(double xPx) {
    return below(centresX, xPx);
  }

  /** How far a position lies from the centres of that column to those of the next, as a share. */
  float shareRight(int columnLeft, double xPx) {
    return share(centresX, columnLeft, xPx);
  }

  double centreX(int column) {
    return centresX[column];
  }

  /**
   * NaN cells take the mean of their nearest valid neighbours; all NaN becomes {@code fallback}.
   */
  MeshGrid withHolesFilled(float fallback) {
    float[] filled = values.clone();
    boolean anyValid = false;
    for (float value : values) {
      anyValid |= !Float.isNaN(value);
    }
    if (!anyValid) {
      Arrays.fill(filled, fallback);
      return with(filled);
    }
    for (int round = 0; round < columns + rows && spreadOnce(filled); round++) {
      continue;
    }
    return with(filled);
  }

  private boolean spreadOnce(float[] cells) {
    float[] before = cells.clone();
    boolean holesLeft = false;
    float[] near = new float[9];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        if (Float.isNaN(before[row * columns + column])) {
          int count = neighbourhood(before, column, row, near);
          double sum = 0;
          for (int i = 0; i < count; i++) {
            sum += near[i];
          }
          cells[row * columns + column] = count == 0 ? Float.NaN : (float) (sum / count);
          holesLeft |= count == 0;
        }
      }
    }
    return holesLeft;
  }

  /** Each cell replaced by the median of its 3 x 3 neighbourhood, as far as it exists. */
  MeshGrid medianFiltered() {
    return medianFiltered(false);
  }

  /**
   * As {@link #medianFiltered}, with the cells missing at the border mirrored through each border
   * cell, so that a slope there stays a slope.
   */
  MeshGrid medianFilteredKeepingSlopes() {
    return medianFiltered(true);
  }

  private MeshGrid medianFiltered(boolean mirrored) {
    float[] filtered = new float[values.length];
    float[] near = new float[18];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int count = neighbourhood(values, column, row, near);
        count = mirrored ? addMirrored(column, row, near, count) : count;
        Arrays.sort(near, 0, count);
        filtered[row * columns + column] =
            count == 0 ? Float.NaN : (near[(count - 1) / 2] + near[count / 2]) / 2;
      }
    }
    return with(filtered);
  }

  private int addMirrored(int column, int row, float[] near, int count) {
    float here = cell(column, row);
    int filled = count;
    for (int j = -1; j <= 1; j++) {
      for (int i = -1; i <= 1; i++) {
        if (!inside(column + i, row + j) && inside(column - i, row - j)) {
          float mirror = 2 * here - cell(column - i, row - j);
          if (!Float.isNaN(mirror)) {
            near[filled++] = mirror;
          }
        }
      }
    }
    return filled;
  }

  private boolean inside(int column, int row) {
    return column >= 0 && row >= 0 && column < columns && row < rows;
  }

  private int neighbourhood(float[] cells, int column, int row, float[] near) {
    int count = 0;
    for (int j = Math.max(0, row - 1); j <= Math.min(rows - 1, row + 1); j++) {
      for (int i = Math.max(0, column - 1); i <= Math.min(columns - 1, column + 1); i++) {
        float value = cells[j * columns + i];
        if (!Float.isNaN(value)) {
          near[count++] = value;
        }
      }
    }
    return count;
  }
}
