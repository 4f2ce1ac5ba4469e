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

  /** A name and its value. */
  record Number(String name, String value) {}
}
