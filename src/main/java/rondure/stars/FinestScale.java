package rondure.stars;

import java.util.Arrays;
import java.util.function.IntPredicate;

/**
 * The matched filter for the sharpest stars, row by row on the grid of {@link WhitenedRows}.
 *
 * <p>On pixels it is {@link Kernel#NARROW}. A Bayer bin of 2 x 2 pixels is too coarse for a sharp
 * star that falls on its corner, so there each bin takes the best of that kernel and four more: one
 * around each of its two greens with their four diagonal neighbours, and one for each of its other
 * two photosites from the four greens around it.
 */
final class FinestScale {
  private static final float DIAGONAL = 0.5f;

  private final WhitenedRows rows;
  private final float[][] bins;
  private final float[][] even;
  private final float[][] odd;
  private final float[] work;
  private final float[] out;

  FinestScale(WhitenedRows rows) {
    this.rows = rows;
    int width = rows.width();
    int greenWidth = rows.hasGreens() ? width : 0;
    this.bins = new float[3][width];
    this.even = new float[3][greenWidth];
    this.odd = new float[3][greenWidth];
    this.work = new float[width];
    this.out = new float[width];
  }

  /** Receives one row; the array is reused for the next. */
  interface RowReader {
    void accept(int row, float[] values);
  }

  /** Calls {@code reader} with every row after its filter, the best of all filters. */
  void readFiltered(RowReader reader) {
    read((row, whitened) -> {}, row -> true, reader, true);
  }

  /**
   * Reads the whitened rows and some of those filtered by the first filter alone.
   *
   * @param whitened gets every row of the grid before it is filtered
   * @param wanted which rows to filter
   * @param filtered gets the wanted rows
   */
  void readPlain(RowReader whitened, IntPredicate wanted, RowReader filtered) {
    read(whitened, wanted, filtered, false);
  }

  private void read(RowReader whitened, IntPredicate wanted, RowReader filtered, boolean sharpest) {
    Arrays.fill(bins[0], 0);
    readRow(0, 1);
    whitened.accept(0, bins[1]);
    for (int row = 0; row < rows.height(); row++) {
      readRow(row + 1, 2);
      if (row + 1 < rows.height()) {
        whitened.accept(row + 1, bins[2]);
      }
      if (wanted.test(row)) {
        Kernel.NARROW.filter(bins, work, out);
        if (sharpest && rows.hasGreens()) {
          takeSharper();
        }
        filtered.accept(row, out);
      }
      roll(bins);
      roll(even);
      roll(odd);
    }
  }

  private void readRow(int row, int slot) {
    if (!rows.hasGreens()) {
      rows.read(row, bins[slot]);
      return;
    }
    rows.readGreens(row, even[slot], odd[slot]);
    float scale = (float) Math.sqrt(0.5);
    float[] bin = bins[slot];
    for (int i = 0; i < bin.length; i++) {
      bin[i] = scale * (even[slot][i] + odd[slot][i]);
    }
  }

  private static void roll(float[][] ring) {
    float[] oldest = ring[0];
    ring[0] = ring[1];
    ring[1] = ring[2];
    ring[2] = oldest;
  }

  /** Raises each bin to the best of the four filters that start from its photosites. */
  private void takeSharper() {
    float[] upper = even[1];
    float[] lower = odd[1];
    float[] lowerBefore = odd[0];
    float[] upperAfter = even[2];
    int side = rows.greenSide();
    float norm = (float) (1 / Math.sqrt(1 + 4 * DIAGONAL * DIAGONAL));
    for (int i = 1; i < out.length - 1; i++) {
      float diagonalOfUpper = lower[i] + lower[i - side] + lowerBefore[i] + lowerBefore[i - side];
      float diagonalOfLower = upper[i] + upper[i + side] + upperAfter[i] + upperAfter[i + side];
      float greens =
          norm
              * Math.max(
                  upper[i] + DIAGONAL * diagonalOfUpper, lower[i] + DIAGONAL * diagonalOfLower);
      float besideUpper = upper[i] + upper[i + side] + lower[i] + lowerBefore[i];
      float besideLower = lower[i] + lower[i - side] + upper[i] + upperAfter[i];
      float between = 0.5f * Math.max(besideUpper, besideLower);
      out[i] = Math.max(out[i], Math.max(greens, between));
    }
  }
}
