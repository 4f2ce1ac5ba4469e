package rondure.stars;

import java.util.Arrays;

/**
 * Matched-filter significance of a plane at doubling widths.
 *
 * <p>Scale k works on bins 2^k times those of {@link WhitenedRows} with a small bell-shaped kernel,
 * so its filter is about 0.7, 1.5, 3 and 6 px (1 σ) wide on pixels, 1.3, 3 and 6 px on a Bayer
 * checkerboard. Every star of up to 20 px FWHM keeps at least 90 % of its best signal-to-noise in
 * one of them, or 80 % when it falls on a corner of the bins. The significances are divided by
 * their own local scatter where that exceeds 1: pixels of developed files are correlated, and a
 * kernel's norm alone would promise too much.
 *
 * <p>Only the coarse scales are kept in memory; rows of the finest are computed as they are asked
 * for.
 */
final class ScaleSpace {
  /** Widest bins, px. */
  private static final int WIDEST_BIN_PX = 8;

  private static final int MESH_BINS = 64;
  private static final int SAMPLED_ROW_STEP = 8;

  private final WhitenedRows rows;
  private final int scales;
  private final int[] widths;
  private final int[] heights;
  private final float[][] significance;
  private final Kernel finest;
  private WhitenedRows.Ramp finestScatter;

  ScaleSpace(WhitenedRows rows) {
    this.rows = rows;
    int count = 1;
    for (int bin = rows.binPx(); bin < WIDEST_BIN_PX; bin *= 2) {
      count++;
    }
    this.scales = count;
    this.widths = new int[count];
    this.heights = new int[count];
    this.significance = new float[count][];
    this.finest = rows.binPx() == 1 ? Kernel.WIDE : Kernel.NARROW;
    for (int k = 0; k < count; k++) {
      widths[k] = Math.max(1, rows.width() >> k);
      heights[k] = Math.max(1, rows.height() >> k);
    }
    build();
  }

  int scales() {
    return scales;
  }

  int width() {
    return rows.width();
  }

  int height() {
    return rows.height();
  }

  int binPx() {
    return rows.binPx();
  }

  /** Significance at scale k ≥ 1 at a place of the finest grid. */
  float at(int k, int x, int y) {
    int column = Math.min(x >> k, widths[k] - 1);
    int row = Math.min(y >> k, heights[k] - 1);
    return significance[k][row * widths[k] + column];
  }

  /** Calls {@code reader} with every row of the finest scale, top to bottom. */
  void readFinest(RowReader reader) {
    int width = rows.width();
    float[][] ring = new float[3][width];
    float[] filtered = new float[width];
    float[] work = new float[width];
    rows.read(0, ring[1]);
    for (int row = 0; row < rows.height(); row++) {
      rows.read(row + 1, ring[(row + 2) % 3]);
      finest.filter(ring[row % 3], ring[(row + 1) % 3], ring[(row + 2) % 3], work, filtered);
      float[] scatter = finestScatter.row(row);
      for (int i = 0; i < width; i++) {
        filtered[i] /= scatter[i];
      }
      reader.accept(row, filtered);
    }
  }

  /** Receives one row of significances; the array is reused for the next. */
  interface RowReader {
    void accept(int row, float[] significance);
  }

  private void build() {
    float[][] binned = new float[scales][];
    for (int k = 1; k < scales; k++) {
      binned[k] = new float[widths[k] * heights[k]];
    }
    readOnce(binned[1]);
    for (int k = 1; k < scales; k++) {
      if (k + 1 < scales) {
        halve(binned[k], widths[k], heights[k], binned[k + 1], widths[k + 1], heights[k + 1]);
      }
      significance[k] = filterPlane(binned[k], widths[k], heights[k]);
      divideByScatter(significance[k], widths[k], heights[k]);
    }
  }

  /** One pass over the finest grid: bins for the next scale, and sampled rows for its scatter. */
  private void readOnce(float[] halved) {
    int width = rows.width();
    int height = rows.height();
    int sampledRows = Math.max(1, height / SAMPLED_ROW_STEP);
    float[] sampled = new float[width * sampledRows];
    float[][] ring = new float[3][width];
    float[] filtered = new float[width];
    float[] work = new float[width];
    for (int row = 0; row < height; row++) {
      float[] current = ring[row % 3];
      rows.read(row, current);
      float[] before = ring[(row + 2) % 3];
      if (row % 2 == 1 && row / 2 < heights[1]) {
        halveRow(before, current, halved, row / 2 * widths[1], widths[1]);
      }
      int sample = row / SAMPLED_ROW_STEP;
      if (row % SAMPLED_ROW_STEP == SAMPLED_ROW_STEP / 2 && sample < sampledRows) {
        finest.filter(ring[(row + 1) % 3], before, current, work, filtered);
        System.arraycopy(filtered, 0, sampled, sample * width, width);
      }
    }
    MeshGrid scatter = scatter(sampled, width, sampledRows, MESH_BINS / SAMPLED_ROW_STEP);
    finestScatter = new WhitenedRows.Ramp(scatter, 1, width, MESH_BINS / 4);
  }

  private static void halveRow(float[] upper, float[] lower, float[] out, int start, int width) {
    for (int i = 0; i < width; i++) {
      out[start + i] = 0.5f * (upper[2 * i] + upper[2 * i + 1] + lower[2 * i] + lower[2 * i + 1]);
    }
  }

  private static void halve(float[] in, int w, int h, float[] out, int outWidth, int outHeight) {
    if (w < 2 || h < 2) {
      return;
    }
    for (int row = 0; row < outHeight; row++) {
      int upper = 2 * row * w;
      int lower = upper + w;
      for (int i = 0; i < outWidth; i++) {
        out[row * outWidth + i] =
            0.5f
                * (in[upper + 2 * i]
                    + in[upper + 2 * i + 1]
                    + in[lower + 2 * i]
                    + in[lower + 2 * i + 1]);
      }
    }
  }

  private static float[] filterPlane(float[] in, int width, int height) {
    float[] out = new float[in.length];
    float[][] ring = new float[3][width];
    float[] work = new float[width];
    float[] filtered = new float[width];
    System.arraycopy(in, 0, ring[1], 0, width);
    for (int row = 0; row < height; row++) {
      float[] next = ring[(row + 2) % 3];
      if (row + 1 < height) {
        System.arraycopy(in, (row + 1) * width, next, 0, width);
      } else {
        Arrays.fill(next, 0);
      }
      Kernel.WIDE.filter(ring[row % 3], ring[(row + 1) % 3], next, work, filtered);
      System.arraycopy(filtered, 0, out, row * width, width);
    }
    return out;
  }

  private static void divideByScatter(float[] plane, int width, int height) {
    MeshGrid scatter = scatter(plane, width, height, MESH_BINS);
    WhitenedRows.Ramp ramp = new WhitenedRows.Ramp(scatter, 1, width, MESH_BINS / 4);
    for (int row = 0; row < height; row++) {
      float[] line = ramp.row(row);
      for (int i = 0; i < width; i++) {
        plane[row * width + i] /= line[i];
      }
    }
  }

  /**
   * Local scatter of significances, at least 1, on a mesh of {@link #MESH_BINS} columns.
   *
   * @param cellRows rows of {@code plane} per mesh cell: fewer than its columns when rows were left
   *     out, each of which then stands for several
   */
  private static MeshGrid scatter(float[] plane, int width, int height, int cellRows) {
    int columns = MeshGrid.cellsAlong(width, MESH_BINS);
    int meshRows = MeshGrid.cellsAlong(height, cellRows);
    float[] cells = new float[columns * meshRows];
    float[] values = new float[MESH_BINS * cellRows];
    CellStatistics statistics = new CellStatistics();
    for (int cell = 0; cell < cells.length; cell++) {
      int x0 = cell % columns * MESH_BINS;
      int y0 = cell / columns * cellRows;
      int across = Math.min(width - x0, MESH_BINS);
      int count = 0;
      for (int y = y0; y < Math.min(height, y0 + cellRows); y++) {
        System.arraycopy(plane, y * width + x0, values, count, across);
        count += across;
      }
      statistics.measure(values, count, 0.01);
      cells[cell] = (float) statistics.noise();
    }
    int stands = MESH_BINS / cellRows;
    MeshGrid grid = new MeshGrid(width, height * stands, MESH_BINS, cells).medianFiltered();
    float[] floored = new float[grid.size()];
    for (int i = 0; i < floored.length; i++) {
      floored[i] = Math.max(1, grid.cell(i));
    }
    return grid.with(floored);
  }

  /** A separable kernel of 3 x 3 places, scaled so that white noise keeps unit variance. */
  enum Kernel {
    /** 1 2 1: half a bin² of variance. */
    WIDE(2),
    /** 1 4 1: a third of a bin². */
    NARROW(4);

    private final float side;
    private final float centre;

    Kernel(double centreWeight) {
      double norm = Math.sqrt(2 + centreWeight * centreWeight);
      this.side = (float) (1 / norm);
      this.centre = (float) (centreWeight / norm);
    }

    void filter(float[] above, float[] here, float[] below, float[] work, float[] out) {
      int width = out.length;
      for (int i = 0; i < width; i++) {
        work[i] = side * (above[i] + below[i]) + centre * here[i];
      }
      for (int i = 1; i < width - 1; i++) {
        out[i] = side * (work[i - 1] + work[i + 1]) + centre * work[i];
      }
      out[0] = centre * work[0] + (width > 1 ? side * work[1] : 0);
      if (width > 1) {
        out[width - 1] = centre * work[width - 1] + side * work[width - 2];
      }
    }
  }
}
