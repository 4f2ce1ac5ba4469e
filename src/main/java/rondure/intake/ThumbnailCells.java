package rondure.intake;

import java.util.Arrays;

/**
 * Mean counts of each colour over the cells of a small raster, gathered row by row while the full
 * picture passes by. Cells cover the picture without gaps; in large pictures each cell looks only
 * at some of its rows and columns.
 */
final class ThumbnailCells {
  /** Longer side of a thumbnail, px. */
  static final int LONGEST_SIDE = 640;

  private static final int WANTED_SAMPLES_ACROSS = 3;

  private final int width;
  private final int height;
  private final int periodPx;
  private final int stride;
  private final int[] columnOfX;
  private final int[] rowOfY;
  private final float[][] sums;
  private final int[][] counts;

  /**
   * @param size the full picture
   * @param colour true when RED and BLUE will be given too
   * @param periodPx side of the smallest block that holds every colour: 1, or 2 for Bayer
   */
  ThumbnailCells(RasterSize size, boolean colour, int periodPx) {
    int longer = Math.max(size.widthPx(), size.heightPx());
    int longest = Math.max(1, Math.min(LONGEST_SIDE, longer / periodPx));
    this.width = scaled(size.widthPx(), longest, longer);
    this.height = scaled(size.heightPx(), longest, longer);
    this.periodPx = periodPx;
    int cellPx = longer / longest;
    this.stride = Math.max(1, cellPx / Math.max(WANTED_SAMPLES_ACROSS, 2 * periodPx));
    this.columnOfX = cellOf(size.widthPx(), width);
    this.rowOfY = cellOf(size.heightPx(), height);
    this.sums = new float[colour ? 3 : 1][width * height];
    this.counts = new int[colour ? 3 : 1][width * height];
  }

  private static int scaled(int sidePx, int longest, int longer) {
    return Math.max(1, (int) Math.round((double) sidePx * longest / longer));
  }

  private static int[] cellOf(int sidePx, int cells) {
    int[] cell = new int[sidePx];
    Arrays.setAll(cell, i -> (int) ((long) i * cells / sidePx));
    return cell;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** One block in so many, across and down, is worth giving. */
  int stride() {
    return stride;
  }

  boolean colour() {
    return sums.length == 3;
  }

  /** True for the rows that are worth giving. */
  boolean wants(int y) {
    return (y / periodPx) % stride == 0;
  }

  /** Adds every stride-th value of a row piece of a wanted row; NaN is left out. */
  void addRow(Channel channel, int x0, int y, float[] values, int count) {
    for (int i = (stride - x0 % stride) % stride; i < count; i += stride) {
      add(channel, x0 + i, y, values[i]);
    }
  }

  /** Adds one value; NaN is left out. */
  void add(Channel channel, int x, int y, float value) {
    if (!Float.isNaN(value)) {
      int plane = colour() ? channel.ordinal() : 0;
      int cell = rowOfY[y] * width + columnOfX[x];
      sums[plane][cell] += value;
      counts[plane][cell]++;
    }
  }

  void scale(float factor) {
    for (float[] plane : sums) {
      for (int i = 0; i < plane.length; i++) {
        plane[i] *= factor;
      }
    }
  }

  /**
   * The mean of each cell, row-major; a cell without a value takes that of its neighbour to the
   * left, then above, then 0.
   */
  float[] means(Channel channel) {
    int plane = colour() ? channel.ordinal() : 0;
    float[] means = new float[width * height];
    for (int i = 0; i < means.length; i++) {
      if (counts[plane][i] > 0) {
        means[i] = sums[plane][i] / counts[plane][i];
      } else if (i % width > 0) {
        means[i] = means[i - 1];
      } else {
        means[i] = i >= width ? means[i - width] : 0;
      }
    }
    return means;
  }
}
