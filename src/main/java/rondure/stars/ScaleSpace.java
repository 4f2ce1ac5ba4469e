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

  private static final int SMALLEST_CELL = 16;
  private static final int LARGEST_CELL = 64;

  /** Of so many rows and columns of large cells two are sampled for the scatter. */
  private static final int SAMPLED_OF = 8;

  /** The first of the two; the other lies as far from the end. */
  private static final int SAMPLED = 1;

  private final WhitenedRows rows;
  private final int scales;
  private final int[] widths;
  private final int[] heights;
  private final float[][] significance;
  private final FinestScale finest;
  private SignificanceNorm finestNorm;

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

  /**
   * Significances of the coarse scales along a row of the finest grid, one value for two columns:
   * that of scale 1, or a wider scale's that is higher and above {@code low}.
   */
  void readCoarse(int y, float low, float[] out) {
    int row = Math.min(y >> 1, heights[1] - 1);
    System.arraycopy(significance[1], row * widths[1], out, 0, widths[1]);
    Arrays.fill(out, widths[1], out.length, out[widths[1] - 1]);
    for (int k = 2; k < scales; k++) {
      float[] plane = significance[k];
      int start = Math.min(y >> k, heights[k] - 1) * widths[k];
      for (int i = 0; i < widths[k]; i++) {
        if (plane[start + i] > low) {
          raise(out, k, i, plane[start + i]);
        }
      }
    }
  }

  private void raise(float[] out, int k, int i, float value) {
    int step = 1 << (k - 1);
    int end = i == widths[k] - 1 ? out.length : Math.min(out.length, (i + 1) * step);
    for (int j = i * step; j < end; j++) {
      out[j] = Math.max(out[j], value);
    }
  }

  /** Calls {@code reader} with every row of the finest scale, top to bottom. */
  void readFinest(FinestScale.RowReader reader) {
    finest.readFiltered(
        (row, filtered) -> {
          finestNorm.apply(row, filtered, 0);
          reader.accept(row, filtered);
        });
  }

  private void build() {
    for (int k = 1; k < scales; k++) {
      significance[k] = new float[widths[k] * heights[k]];
    }
    readOnce(significance[1]);
    for (int k = 1; k < scales; k++) {
      float[] plane = significance[k];
      if (k + 1 < scales) {
        halve(plane, k, significance[k + 1]);
      }
      filterPlane(plane, widths[k], heights[k]);
      SignificanceNorm norm =
          meshBins(k) == LARGEST_CELL
              ? norm(k, sampled(plane, k), sampledBefore(widths[k]), sampledBefore(LARGEST_CELL))
              : norm(k, plane, widths[k], meshBins(k));
      for (int row = 0; row < heights[k]; row++) {
        norm.apply(row, plane, row * widths[k]);
      }
    }
  }

  private SignificanceNorm norm(int k, float[] plane, int planeWidth, int cellSide) {
    int bins = meshBins(k);
    int cells = MeshGrid.cellsAlong(widths[k], bins) * MeshGrid.cellsAlong(heights[k], bins);
    MeshGrid mesh = new MeshGrid(widths[k], heights[k], bins, new float[cells]);
    return SignificanceNorm.of(plane, planeWidth, cellSide, mesh, widths[k]);
  }

  /** One pass over the finest grid: bins for the next scale, and some places for its scatter. */
  private void readOnce(float[] halved) {
    int width = rows.width();
    int sampledWidth = sampledBefore(width);
    float[] sampled = new float[sampledWidth * sampledBefore(rows.height())];
    float[] before = new float[width];
    finest.readPlain(
        (row, whitened) -> {
          if (row % 2 == 0) {
            System.arraycopy(whitened, 0, before, 0, width);
          } else if (width > 1) {
            halveRow(before, whitened, halved, row / 2 * widths[1], widths[1]);
          }
        },
        ScaleSpace::isSampled,
        (row, filtered) -> {
          sample(filtered, 0, width, sampled, sampledBefore(row) * sampledWidth);
        });
    int cellSide = sampledBefore(meshBins(0));
    finestNorm = norm(0, sampled, sampledWidth, cellSide);
  }

  private float[] sampled(float[] plane, int k) {
    int sampledWidth = sampledBefore(widths[k]);
    float[] sampled = new float[sampledWidth * sampledBefore(heights[k])];
    for (int row = 0; row < heights[k]; row++) {
      if (isSampled(row)) {
        sample(plane, row * widths[k], widths[k], sampled, sampledBefore(row) * sampledWidth);
      }
    }
    return sampled;
  }

  private static void sample(float[] row, int start, int width, float[] out, int outStart) {
    int next = outStart;
    for (int x = SAMPLED; x < width; x += SAMPLED_OF) {
      out[next++] = row[start + x];
      int other = x + SAMPLED_OF - 1 - 2 * SAMPLED;
      if (other < width) {
        out[next++] = row[start + other];
      }
    }
  }

  private static boolean isSampled(int place) {
    int within = place % SAMPLED_OF;
    return within == SAMPLED || within == SAMPLED_OF - 1 - SAMPLED;
  }

  /** How many of the places before {@code place} are sampled. */
  private static int sampledBefore(int place) {
    int within = place % SAMPLED_OF;
    int extra = within > SAMPLED_OF - 1 - SAMPLED ? 2 : within > SAMPLED ? 1 : 0;
    return 2 * (place / SAMPLED_OF) + extra;
  }

  private int meshBins(int scale) {
    return Math.max(SMALLEST_CELL, Math.min(LARGEST_CELL, MESH_PX / rows.binPx() >> scale));
  }

  /** Bins of two by two; {@code upper} is used up. */
  private static void halveRow(float[] upper, float[] lower, float[] out, int start, int width) {
    for (int i = 0; i < upper.length; i++) {
      upper[i] = 0.5f * (upper[i] + lower[i]);
    }
    for (int i = 0; i < width; i++) {
      out[start + i] = upper[2 * i] + upper[2 * i + 1];
    }
  }

  private void halve(float[] in, int k, float[] out) {
    int width = widths[k];
    if (width < 2 || heights[k] < 2) {
      return;
    }
    float[] upper = new float[width];
    float[] lower = new float[width];
    for (int row = 0; row < heights[k + 1]; row++) {
      System.arraycopy(in, 2 * row * width, upper, 0, width);
      System.arraycopy(in, (2 * row + 1) * width, lower, 0, width);
      halveRow(upper, lower, out, row * widths[k + 1], widths[k + 1]);
    }
  }

  /** Filters a plane in place; beyond its border lies sky. */
  private static void filterPlane(float[] plane, int width, int height) {
    int reach = Kernel.WIDE.reach();
    float[][] window = new float[2 * reach + 1][width];
    float[] work = new float[width];
    float[] filtered = new float[width];
    for (int row = -reach; row < height; row++) {
      float[] oldest = window[0];
      System.arraycopy(window, 1, window, 0, 2 * reach);
      window[2 * reach] = oldest;
      if (row + reach < height) {
        System.arraycopy(plane, (row + reach) * width, oldest, 0, width);
      } else {
        Arrays.fill(oldest, 0);
      }
      if (row >= 0) {
        Kernel.WIDE.filter(window, work, filtered);
        System.arraycopy(filtered, 0, plane, row * width, width);
      }
    }
  }
}
