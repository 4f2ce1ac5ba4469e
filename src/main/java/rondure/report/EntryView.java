package rondure.report;

import java.util.List;

/**
 * One frame in full.
 *
 * @param id anchor on the page
 * @param noteId id of the notes field
 * @param noteTitle spoken name of the notes field
 * @param mark its sign
 * @param file its name
 * @param grade in words, empty when not graded
 * @param facts exposure, aperture, time… in one line
 * @param cause heading: what softened it, and how sure that is
 * @param sentences evidence, what it means, what to do
 * @param budget the blur budget bar, or none
 * @param budgetTerms the same in numbers, for a teacher; else empty
 * @param photographs the thumbnail, or none
 * @param regions sky and ground over the thumbnail
 * @param map ellipse map
 * @param fan direction fan
 * @param fanWords what the fan shows
 * @param averageStars the row of average stars, or none
 * @param numbers names and values
 * @param likelihoods all causes with their probabilities, for a teacher; else empty
 */
record EntryView(
    String id,
    String noteId,
    String noteTitle,
    PictureView mark,
    String file,
    String grade,
    String facts,
    String cause,
    List<String> sentences,
    List<PictureView> budget,
    String budgetTerms,
    List<PictureView> photographs,
    PictureView regions,
    PictureView map,
    PictureView fan,
    String fanWords,
    List<PictureView> averageStars,
    List<Number> numbers,
    String likelihoods) {

  /** Letters that a line of the sentences and of small print takes, and how high it is. */
  private static final int LETTERS = 58;

  private static final double LINE_PX = 15.2;
  private static final double ROW_PX = 14.3;
  private static final double FAN_AND_WORDS_PX = 150;
  private static final double FIELD_PX = 45;

  /** Whether the notes field stands below the numbers, as below the words is less room. */
  boolean notesBeside() {
    double left =
        LINE_PX * lines(String.join(" ", sentences))
            + ROW_PX * (lines(likelihoods) + lines(budgetTerms));
    double bar = budget.stream().mapToDouble(PictureView::heightPx).sum();
    return left > bar + Math.max(ROW_PX * numbers.size(), FAN_AND_WORDS_PX - FIELD_PX);
  }

  private static int lines(String text) {
    return (text.length() + LETTERS - 1) / LETTERS;
  }

  /** A name and its value. */
  record Number(String name, String value) {}
}
