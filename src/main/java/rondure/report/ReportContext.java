package rondure.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.Pictures;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;

/**
 * What every view is made from.
 *
 * @param book the night
 * @param settings how the report is to look
 * @param words the sentences
 * @param pictures where drawings are registered
 */
record ReportContext(NightBook book, ReportSettings settings, Wording words, Pictures pictures) {

  /** Width of a picture as wide as the page's text, CSS pixels. */
  int pictureWidthPx() {
    return settings.pageSize() == ReportSettings.PageSize.A4 ? 652 : 675;
  }

  /** The sign of a kind of frame, with the cause's name as its spoken form. */
  PictureView mark(Mark mark) {
    String name = "mark-" + mark;
    pictures.add(name, mark.picture());
    return new PictureView(name, markName(mark), 12, 12);
  }

  String markName(Mark mark) {
    return words.say("mark." + mark);
  }

  /** Position of a frame in the book, by file; ids on the pages are made from it. */
  Map<String, Integer> positions() {
    Map<String, Integer> positions = new HashMap<>();
    for (int i = 0; i < book.frames().size(); i++) {
      positions.put(book.frames().get(i).file(), i);
    }
    return positions;
  }

  List<NightFrame> measured() {
    return book.frames().stream().filter(Ranking::isMeasured).toList();
  }

  /**
   * How many of the measured frames that fit were softened by what; frames without a verdict aside,
   * and those of focus tests, which are soft on purpose.
   */
  Map<Mark, Integer> tally(Predicate<NightFrame> counted) {
    Map<Mark, Integer> tally = new EnumMap<>(Mark.class);
    measured().stream()
        .filter(frame -> frame.verdict().isPresent())
        .filter(frame -> !frame.isFocusTest())
        .filter(counted)
        .forEach(frame -> tally.merge(Mark.of(frame), 1, Integer::sum));
    return tally;
  }

  int kept() {
    return (int) book.frames().stream().filter(Ranking::isKeep).count();
  }

  /** The frames of each night in time order; frames outside every night last. */
  List<List<NightFrame>> byNight() {
    List<List<NightFrame>> nights = new ArrayList<>();
    book.nights()
        .forEach(
            night ->
                nights.add(
                    book.frames().stream()
                        .filter(frame -> frame.nightIndex().orElse(0) == night.index())
                        .toList()));
    List<Integer> known = book.nights().stream().map(night -> night.index()).toList();
    nights.add(
        book.frames().stream()
            .filter(frame -> !known.contains(frame.nightIndex().orElse(0)))
            .toList());
    return nights.stream().filter(frames -> !frames.isEmpty()).toList();
  }

  /** The width drawings of a scene's frames are scaled by. */
  double referenceFwhmPx(Scene scene) {
    return scene.sharpestFwhmPx().filter(width -> width > 0).orElse(2.5);
  }
}
