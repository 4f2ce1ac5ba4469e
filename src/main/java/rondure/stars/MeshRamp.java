package rondure.stars;

/**
 * A mesh read row by row at the places of a coarser or equal grid: at each place {@code from +
 * share · rise}, exactly linear between the cells' centres.
 */
final class MeshRamp {
  private final MeshGrid grid;
  private final double binPx;
  private final float[] from;
  private final float[] rise;
  private final float[] now;
  private int meshRow = -1;

  /**
   * Reads a mesh over a raster.
   *
   * @param binPx raster pixels to a grid place
   * @param width grid places in a row
   */
  MeshRamp(MeshGrid grid, double binPx, int width) {
    this.grid = grid;
    this.binPx = binPx;
    this.from = new float[width];
    this.rise = new float[width];
    this.now = new float[width];
  }

  /** Goes to a row of places; {@link #from} and {@link #rise} then hold for it. */
  float shareAt(int row) {
    double first = (binPx - 1) / 2;
    double y = row * binPx + first;
    int above = grid.rowAbove(y);
    if (above != meshRow) {
      meshRow = above;
      grid.fillRow(above, first, binPx, from);
      grid.fillRow(Math.min(above + 1, grid.rows() - 1), first, binPx, rise);
      for (int i = 0; i < rise.length; i++) {
        rise[i] -= from[i];
      }
    }
    return grid.shareBelow(above, y);
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
