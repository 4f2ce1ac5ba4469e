package rondure.intake;

import java.util.Arrays;
import java.util.OptionalInt;
import rondure.base.RobustStats;

/**
 * Finds out from the pixels alone whether a picture is a Bayer mosaic that was never developed.
 *
 * <p>In a mosaic the four sites of a 2 x 2 cell have different levels, except the two green ones on
 * one diagonal. Rows or columns of unequal gain do not look like that: they make both diagonals
 * unequal. Levels are compared by medians of differences inside cells.
 */
final class MosaicStatistics {
  private static final int CELLS_ACROSS = 300;
  private static final int FEWEST_CELLS = 400;
  private static final double MOST_ERRORS = 10;
  private static final double LARGEST_INEQUALITY = 0.2;

  private MosaicStatistics() {}

  /** (x + y) mod 2 of the green sites, or empty when this does not look like a Bayer mosaic. */
  static OptionalInt greenParity(float[] samples, int widthPx, int heightPx) {
    int across = Math.min(CELLS_ACROSS, widthPx / 2);
    int down = Math.min(CELLS_ACROSS, heightPx / 2);
    if (across * down < FEWEST_CELLS) {
      return OptionalInt.empty();
    }
    double[][] contrasts = new double[3][across * down];
    for (int i = 0; i < across * down; i++) {
      int x = (int) ((long) (i % across) * (widthPx / 2) / across) * 2;
      int y = (int) ((long) (i / across) * (heightPx / 2) / down) * 2;
      int at = y * widthPx + x;
      double even = (double) samples[at] - samples[at + widthPx + 1];
      double odd = (double) samples[at + 1] - samples[at + widthPx];
      contrasts[0][i] = even;
      contrasts[1][i] = odd;
      contrasts[2][i] =
          ((double) samples[at]
                  + samples[at + widthPx + 1]
                  - samples[at + 1]
                  - samples[at + widthPx])
              / 2;
    }
    return decide(contrasts);
  }

  private static OptionalInt decide(double[][] contrasts) {
    double[] median = Arrays.stream(contrasts).mapToDouble(RobustStats::median).toArray();
    double error = 0;
    for (double[] contrast : contrasts) {
      error = Math.max(error, RobustStats.madSigma(contrast) / Math.sqrt(contrast.length));
    }
    double even = Math.abs(median[0]);
    double odd = Math.abs(median[1]);
    double strongest = Math.max(Math.max(even, odd), Math.abs(median[2]));
    double equal = Math.min(even, odd);
    double unequal = Math.max(even, odd);
    boolean mosaic =
        strongest > MOST_ERRORS * error
            && unequal > MOST_ERRORS / 2 * error
            && equal < LARGEST_INEQUALITY * unequal + error;
    return mosaic ? OptionalInt.of(even < odd ? 0 : 1) : OptionalInt.empty();
  }
}
