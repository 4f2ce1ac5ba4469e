package rondure.stars;

import java.util.Arrays;

/**
 * Matched-filter significance of a plane at doubling widths.
 *
 * <p>Scale 0 is {@link FinestScale}; scale k ≥ 1 works on bins 2^k times those of {@link
 * WhitenedRows} with {@link Kernel#WIDE}. The filters are about 0.7, 2.1, 4.2 and 8.4 px (1 σ) wide
 * on pixels, 0.9 to 1.5, 4.2 and 8.4 px on a Bayer checkerboard. The significances are divided by
 * their own local scatter where that exceeds 1: pixels of developed files are correlated, and a
 * kernel's norm alone would promise too much.
 *
 * <p>Only the coarse scales are kept in memory; rows of the finest are computed as they are asked
 * for.
 */
final class ScaleSpace {
  /** Widest bins, px. */
  private static final int WIDEST_BIN_PX = 8;

  /** Cells in which the scatter of a scale is measured, px; at least 16 bins, at most 64. */
  private static final int MESH_PX = 128;

  private static final int SAMPLED_ROW_STEP = 8;
  private static final int RAMP_ROWS = 8;

  private final WhitenedRows rows;
  private final int scales;
  private final int[] widths;
  private final int[] heights;
  private final float[][] significance;
  private final FinestScale finest;
  private Norm finestNorm;

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
    this.finest = new FinestScale(rows);
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
  void readFinest(FinestScale.RowReader reader) {
    finest.read(
        (row, whitened) -> {},
        (row, filtered) -> {
          finestNorm.apply(row, filtered, 0);
          reader.accept(row, filtered);
        },
        true);
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
      Norm norm = Norm.of(significance[k], widths[k], heights[k], meshBins(k), 1);
      for (int row = 0; row < heights[k]; row++) {
        norm.apply(row, significance[k], row * widths[k]);
      }
    }
  }

  /** One pass over the finest grid: bins for the next scale, and sampled rows for its scatter. */
  private void readOnce(float[] halved) {
    int width = rows.width();
    int sampledRows = Math.max(1, rows.height() / SAMPLED_ROW_STEP);
    float[] sampled = new float[width * sampledRows];
    float[] before = new float[width];
    finest.read(
        (row, whitened) -> {
          if (row % 2 == 0) {
            System.arraycopy(whitened, 0, before, 0, width);
          } else if (width > 1) {
            halveRow(before, whitened, halved, row / 2 * widths[1], widths[1]);
          }
        },
        (row, filtered) -> {
          int sample = row / SAMPLED_ROW_STEP;
          if (row % SAMPLED_ROW_STEP == SAMPLED_ROW_STEP / 2 && sample < sampledRows) {
            System.arraycopy(filtered, 0, sampled, sample * width, width);
          }
        },
        false);
    finestNorm = Norm.of(sampled, width, sampledRows, meshBins(0), SAMPLED_ROW_STEP);
  }

  private int meshBins(int scale) {
    return Math.max(16, Math.min(64, MESH_PX / rows.binPx() >> scale));
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
    int reach = Kernel.WIDE.reach();
    float[][] window = new float[2 * reach + 1][width];
    float[] work = new float[width];
    float[] filtered = new float[width];
    for (int row = 0; row < height; row++) {
      for (int k = -reach; k <= reach; k++) {
        boolean inside = row + k >= 0 && row + k < height;
        if (inside) {
          System.arraycopy(in, (row + k) * width, window[k + reach], 0, width);
        } else {
          Arrays.fill(window[k + reach], 0);
        }
      }
      Kernel.WIDE.filter(window, work, filtered);
      System.arraycopy(filtered, 0, out, row * width, width);
    }
    return out;
  }

  /** What a filtered plane shows of empty sky: its offset and its scatter, on a mesh. */
  private record Norm(int width, WhitenedRows.Ramp offset, WhitenedRows.Ramp scatter) {

    /**
     * Measures a plane of significances on a mesh of {@code bins} columns.
     *
     * @param rowStep rows that each row of {@code plane} stands for
     */
    static Norm of(float[] plane, int width, int height, int bins, int rowStep) {
      int cellRows = bins / rowStep;
      int columns = MeshGrid.cellsAlong(width, bins);
      int meshRows = MeshGrid.cellsAlong(height, cellRows);
      float[] offsets = new float[columns * meshRows];
      float[] scatters = new float[columns * meshRows];
      float[] values = new float[bins * cellRows];
      CellStatistics statistics = new CellStatistics();
      for (int cell = 0; cell < offsets.length; cell++) {
        int x0 = cell % columns * bins;
        int y0 = cell / columns * cellRows;
        int across = Math.min(width - x0, bins);
        int count = 0;
        for (int y = y0; y < Math.min(height, y0 + cellRows); y++) {
          System.arraycopy(plane, y * width + x0, values, count, across);
          count += across;
        }
        statistics.measure(values, count, 0.01);
        offsets[cell] = (float) statistics.level();
        scatters[cell] = (float) statistics.noise();
      }
      MeshGrid grid = new MeshGrid(width, height * rowStep, bins, offsets);
      MeshGrid scatter = grid.with(scatters).medianFiltered();
      float[] atLeastOne = new float[scatter.size()];
      for (int i = 0; i < atLeastOne.length; i++) {
        atLeastOne[i] = Math.max(1, scatter.cell(i));
      }
      return new Norm(
          width, ramp(grid.medianFiltered(), width), ramp(grid.with(atLeastOne), width));
    }

    private static WhitenedRows.Ramp ramp(MeshGrid grid, int width) {
      return new WhitenedRows.Ramp(grid, 1, width, RAMP_ROWS);
    }

    /** Takes the offset off a row and divides by the scatter. */
    void apply(int row, float[] values, int start) {
      float[] offsets = offset.row(row);
      float[] scatters = scatter.row(row);
      for (int i = 0; i < width; i++) {
        values[start + i] = (values[start + i] - offsets[i]) / scatters[i];
      }
    }
  }
}
