package rondure.stars;

/**
 * A mesh read row by row at the places of a coarser or equal grid: at each place {@code from +
 * share · rise}, exactly linear between the cells' centres.
 */
final class MeshRamp {
  private final MeshGrid grid;
  private final double binPx;
  private final float[] shares;
  private final float[] rise;
  private final float[] now;
  private float[] from;
  private float[] to;
  private int meshRow = -2;

  /**
   * Reads a mesh over a raster.
   *
   * @param binPx raster pixels to a grid place
   * @param width grid places in a row
   */
  MeshRamp(MeshGrid grid, double binPx, int width) {
    this.grid = grid;
    this.binPx = binPx;
    this.shares = new float[width];
    this.rise = new float[width];
    this.now = new float[width];
    this.from = new float[width];
    this.to = new float[width];
    for (int i = 0; i < width; i++) {
      double x = place(i);
      shares[i] = grid.shareRight(grid.columnLeft(x), x);
    }
  }

  /** Where a place of the grid lies on the raster, along either side. */
  private double place(int index) {
    return index * binPx + (binPx - 1) / 2;
  }

  /** Goes to a row of places; {@link #from} and {@link #rise} then hold for it. */
  float shareAt(int row) {
    double y = place(row);
    int above = grid.rowAbove(y);
    if (above != meshRow) {
      float[] used = from;
      from = to;
      to = used;
      if (above != meshRow + 1) {
        fill(above, from);
      }
      fill(Math.min(above + 1, grid.rows() - 1), to);
      meshRow = above;
      for (int i = 0; i < rise.length; i++) {
        rise[i] = to[i] - from[i];
      }
    }
    return grid.shareBelow(above, y);
  }

  /** The values along the centres of a row of cells. */
  private void fill(int row, float[] out) {
    int i = 0;
    for (int column = 0; i < out.length; column++) {
      int last = Math.max(0, grid.columns() - 2);
      float left = grid.cell(column, row);
      float right = grid.cell(Math.min(column + 1, grid.columns() - 1), row);
      int end = column >= last ? out.length : firstFrom(grid.centreX(column + 1));
      for (; i < end; i++) {
        out[i] = left + shares[i] * (right - left);
      }
    }
  }

  /** The first place at or beyond a position. */
  private int firstFrom(double x) {
    return Math.min(now.length, (int) Math.ceil((x - (binPx - 1) / 2) / binPx));
  }

  float[] from() {
    return from;
  }

  float[] rise() {
    return rise;
  }

  /** The values of a row; the array is reused for the next. */
  float[] row(int row) {
    float share = shareAt(row);
    for (int i = 0; i < now.length; i++) {
      now[i] = from[i] + share * rise[i];
    }
    return now;
  }
}
