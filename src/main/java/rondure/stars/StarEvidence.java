package rondure.stars;

import java.util.List;

/** How many clear, compact sources each mesh cell holds: where they are many, there is sky. */
final class StarEvidence {
  private static final double CLEAR_SNR = 10;

  /** Wider than any star or trail across its length: a variance of (12 px)². */
  static final double WIDEST_MINOR_PX2 = 144;

  /** More in one cell do not make it more of a sky. */
  private static final double MOST_PER_CELL = 8;

  private StarEvidence() {}

  static double[] perCell(List<Source> sources, int columns, int rows, int meshPx) {
    double[] counts = new double[columns * rows];
    for (Source source : sources) {
      boolean starLike =
          source.filterSnr() >= CLEAR_SNR
              && source.moments().minorPx2() < WIDEST_MINOR_PX2
              && !HotPixelRule.maybeSingle(source.spread());
      if (starLike) {
        int column = Math.max(0, Math.min(columns - 1, (int) (source.xPx() / meshPx)));
        int row = Math.max(0, Math.min(rows - 1, (int) (source.yPx() / meshPx)));
        int cell = row * columns + column;
        counts[cell] = Math.min(MOST_PER_CELL, counts[cell] + 1);
      }
    }
    return counts;
  }
}
