package rondure.intake;

import rondure.base.FrameProblem;

/**
 * Counts stretches of exact zeros in sensor data before black is subtracted. A RAW whose pieces
 * were lost decodes without complaint, to zeros; a real dark sky is never zero over hundreds of
 * neighbouring sites when its black level is above zero.
 */
final class EmptyRows {
  private static final int STRETCH_PX = 256;
  private static final double MOST_EMPTY = 0.25;

  private final int widthPx;
  private long stretches;
  private long empty;
  private long rows;
  private long emptyRows;

  EmptyRows(RasterSize size) {
    this.widthPx = size.widthPx();
  }

  void look(float[] row) {
    int emptyHere = 0;
    int stretchesHere = 0;
    for (int start = 0; start < widthPx; start += STRETCH_PX) {
      stretchesHere++;
      emptyHere += zero(row, start, Math.min(widthPx, start + STRETCH_PX)) ? 1 : 0;
    }
    stretches += stretchesHere;
    empty += emptyHere;
    rows++;
    emptyRows += emptyHere == stretchesHere ? 1 : 0;
  }

  private static boolean zero(float[] row, int start, int end) {
    for (int x = start; x < end; x++) {
      if (row[x] != 0) {
        return false;
      }
    }
    return true;
  }

  /**
   * @param black the black level; when it is 0, only whole empty rows count
   * @throws FrameProblem when a quarter of the picture or more is empty
   */
  void check(double black) throws FrameProblem {
    double share = black > 0 ? (double) empty / stretches : (double) emptyRows / rows;
    if (share >= MOST_EMPTY) {
      throw new FrameProblem(
          "the RAW is damaged: "
              + Math.round(100 * share)
              + " % of the picture is empty; copy it again from the card");
    }
  }
}
