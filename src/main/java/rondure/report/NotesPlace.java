package rondure.report;

import java.util.List;

/** Where an entry has more room for its notes field: below its words or below its numbers. */
final class NotesPlace {
  /** Letters that a line of the sentences and of small print takes, and how high it is. */
  private static final int LETTERS = 58;

  private static final double LINE_PX = 15.2;
  private static final double ROW_PX = 14.3;
  private static final double FAN_AND_WORDS_PX = 150;
  private static final double FIELD_PX = 45;

  private NotesPlace() {}

  /**
   * Whether below the numbers.
   *
   * @param sentences of the entry
   * @param smallPrint lines below them
   * @param bar above the numbers, or none
   * @param numbers rows
   */
  static boolean isBeside(
      List<String> sentences, List<String> smallPrint, List<PictureView> bar, int numbers) {
    double left =
        LINE_PX * lines(String.join(" ", sentences))
            + ROW_PX * smallPrint.stream().mapToInt(NotesPlace::lines).sum();
    double above = bar.stream().mapToDouble(PictureView::heightPx).sum();
    return left > above + Math.max(ROW_PX * numbers, FAN_AND_WORDS_PX - FIELD_PX);
  }

  private static int lines(String text) {
    return (text.length() + LETTERS - 1) / LETTERS;
  }
}
