package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.FrameStatus;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.NightSummary;
import rondure.night.OutputUse;
import rondure.report.layout.Pictures;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;

/** What the first page tells of sets of which little is kept or read. */
class GlanceWordsTest {
  private static GlanceView glance(NightBook book) throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    ReportSettings settings = ReportSettings.defaults("0.1.0", List.of());
    return GlancePage.view(new ReportContext(book, settings, words, new Pictures()), Set.of());
  }

  private static List<NightFrame> some(Predicate<NightFrame> wanted, int most) {
    return BookFixture.night(60).frames().stream().filter(wanted).limit(most).toList();
  }

  private static String advice(GlanceView view) {
    return view.advice().stream()
        .map(point -> point.number() + " " + point.action() + " " + point.reason() + " ")
        .collect(Collectors.joining());
  }

  @Test
  void theTightestFramesAreAmongThoseToKeep() throws TemplateProblem {
    List<NightFrame> frames = new ArrayList<>(some(Ranking::isKeep, 1));
    frames.addAll(some(f -> Ranking.isMeasured(f) && !Ranking.isKeep(f), 3));
    GlanceView view = glance(BookFixture.book("ridge", frames));
    assertEquals(1, view.best().size());
    assertTrue(view.verdict().startsWith("Keep 1 of 4 frames, "), view.verdict());
  }

  @Test
  void whereNothingIsKeptTheBestOfTheRestAreNamed() throws TemplateProblem {
    List<NightFrame> frames = some(f -> Ranking.isMeasured(f) && !Ranking.isKeep(f), 3);
    assertEquals(3, glance(BookFixture.book("ridge", frames)).best().size());
  }

  /** What serves a larger use serves the smaller ones too. */
  @Test
  void theFirstPageTellsHowManyFramesServeWhichUse() throws TemplateProblem {
    NightBook book = BookFixture.night(60);
    int[] counts = new int[OutputUse.values().length];
    book.frames().stream()
        .filter(Ranking::isMeasured)
        .forEach(f -> counts[f.usefulness().orElseThrow().largestUse().ordinal()]++);
    GlanceView view = glance(book);
    int whole = counts[0] + counts[1] + counts[2] + counts[3];
    for (int use = 0; use < 3; use++) {
      int served = IntStream.rangeClosed(0, use).map(i -> counts[i]).sum();
      assertEquals(Integer.toString(served), view.uses().get(use).count());
      assertEquals(Math.round(100.0 * served / whole), view.uses().get(use).share());
    }
    String remark = view.usesRemark().get(0);
    assertTrue(remark.startsWith("Of " + whole + " frames"), remark);
    assertEquals(counts[3] > 1, remark.contains("; " + counts[3] + " serve none"), remark);
    List<NightFrame> lost = some(f -> f.status() == FrameStatus.UNREADABLE, 2);
    assertEquals(List.of(), glance(BookFixture.book("ridge", lost)).uses());
  }

  /** Nothing kept and no cause: that is no night to repeat. */
  @Test
  void framesThatAreNotKeptWithoutACauseAreNeitherPraisedNorToBeRepeated() throws TemplateProblem {
    List<NightFrame> frames =
        some(f -> Mark.of(f) == Mark.NONE, 4).stream().map(BookFixture::notKept).toList();
    GlanceView view = glance(BookFixture.book("ridge", frames));
    assertTrue(view.verdict().startsWith("None of 4 frames"), view.verdict());
    assertTrue(view.verdict().contains("stars wider than the best"), view.verdict());
    String advice = advice(view);
    assertTrue(!advice.contains("Do the same again"), advice);
    // The fixture's sharp frames: 0.12 of 0.24 px² beyond the core, more than half, by the lens.
    assertTrue(advice.contains("cost 4 frames the grade keep"), advice);
    assertTrue(advice.contains("lens edges"), advice);
  }

  @Test
  void filesThatCannotBeReadAreNoMatterOfExposure() throws TemplateProblem {
    List<NightFrame> frames = some(f -> f.status() == FrameStatus.UNREADABLE, 2);
    GlanceView view = glance(BookFixture.book("ridge", frames));
    assertTrue(advice(view).contains("Copy the files again"), advice(view));
    List<NightFrame> dim = some(f -> f.status() == FrameStatus.TOO_FEW_STARS, 1);
    String advice = advice(glance(BookFixture.book("ridge", dim)));
    assertTrue(advice.contains("exposure"), advice);
  }

  @Test
  void oneNightSaysWhatHappenedAndWhen() throws TemplateProblem {
    GlanceView view = glance(BookFixture.night(20));
    assertEquals("What happened", view.nightsTitle());
    assertEquals(1, view.nights().size());
    String line = view.nights().get(0);
    assertTrue(line.matches("(.+ [0-9:]{5}( to [0-9:]{5})?; ){5}and 6 more under .+"), line);
    assertFalse(line.contains("aim"), line);
  }

  @Test
  void aQuietNightSaysNothingOfEvents() throws TemplateProblem {
    GlanceView view = glance(BookFixture.book("ridge", some(Ranking::isKeep, 3)));
    assertEquals("", view.nightsTitle());
    assertEquals(List.of(), view.nights());
  }

  @Test
  void eachOfSeveralNightsHasItsOwnCountsAndEvents() throws TemplateProblem {
    NightBook one = BookFixture.night(20);
    NightSummary first = one.nights().get(0);
    NightSummary second = new NightSummary(2, first.start(), first.end(), List.of(), 7, 5, 2);
    NightBook two =
        new NightBook(
            one.inputName(),
            List.of(first, second),
            one.scenes(),
            one.frames(),
            one.leftOut(),
            one.staticDetections(),
            one.events(),
            one.focusSeries(),
            one.notes());
    GlanceView view = glance(two);
    assertEquals("Night by night", view.nightsTitle());
    assertTrue(view.nights().get(0).startsWith("Night 1, "), view.nights().toString());
    assertTrue(view.nights().get(0).contains("; cloud 22:40; "), view.nights().toString());
    assertTrue(
        view.nights().get(1).endsWith("keep 2 of 5 measured frames. "), view.nights().toString());
  }

  private static NightBook with(List<NightFrame> frames, List<String> notes, Event... events) {
    NightBook book = BookFixture.book("ridge", frames);
    return new NightBook(
        book.inputName(),
        book.nights(),
        book.scenes(),
        book.frames(),
        book.leftOut(),
        book.staticDetections(),
        List.of(events),
        book.focusSeries(),
        notes);
  }

  private static Event event(EventKind kind, int first, int last) {
    return new Event(kind, 1, first, last, new TreeMap<>());
  }

  /** Sharp frames, three that were shaken, and one out of focus. */
  private static List<NightFrame> windy() {
    List<NightFrame> frames = new ArrayList<>(some(Ranking::isKeep, 4));
    frames.addAll(
        some(f -> Mark.of(f) == Mark.TRIPOD && f.facts().exposureSeconds().isPresent(), 3));
    frames.addAll(some(f -> Mark.of(f) == Mark.FOCUS, 1));
    return frames;
  }

  @Test
  void theVerdictNamesTheEventBehindMostOfWhatWasLost() throws TemplateProblem {
    Event wind = event(EventKind.GUSTS, 4, 6);
    String said = glance(with(windy(), List.of(), event(EventKind.KNOCK, 1, 1), wind)).verdict();
    assertTrue(said.startsWith("Keep 4 of 8 frames, "), said);
    String from = clock(windy().get(4));
    String to = clock(windy().get(6));
    String when = from.equals(to) ? " at " + from : " between " + from + " and " + to;
    assertTrue(said.endsWith("; the rest suffered mainly from wind" + when + "."), said);
  }

  private static String clock(NightFrame frame) {
    return Figures.clock(frame.facts().captureTime().orElseThrow().local());
  }

  /** One of three shaken frames is no explanation for the others. */
  @Test
  void anEventThatExplainsLittleIsNotBlamed() throws TemplateProblem {
    String said = glance(with(windy(), List.of(), event(EventKind.GUSTS, 4, 4))).verdict();
    assertTrue(said.contains("; the rest suffered mainly from a tripod that moved"), said);
    assertFalse(said.contains("wind"), said);
  }

  @Test
  void aCauseThatIsNotMostOfTheRestIsSaidToBeTheCommonest() throws TemplateProblem {
    List<NightFrame> frames = new ArrayList<>(windy());
    frames.addAll(some(f -> Mark.of(f) == Mark.TRAILING, 2));
    frames.addAll(some(f -> Mark.of(f) == Mark.LENS, 2));
    String said = glance(with(frames, List.of(), event(EventKind.GUSTS, 4, 6))).verdict();
    assertTrue(said.contains("the rest suffered most often from wind"), said);
  }

  /** A remark that finds no room is not lost: the page says where it stands. */
  @Test
  void remarksThatDoNotFitAreCountedAndPointedTo() throws TemplateProblem {
    String long1 = "Two cameras had clocks 14 minutes apart; one was shifted. ".repeat(4).strip();
    List<String> notes = Collections.nCopies(30, long1);
    GlanceView view = glance(with(windy(), notes));
    int shown = (int) view.remarks().stream().filter(long1::equals).count();
    assertTrue(shown >= 1 && shown < 30, shown + " remarks shown");
    assertEquals("#remarks", view.more().get(0).href());
    assertEquals(30 - shown + " more remarks on page", view.more().get(0).words());
    assertEquals(List.of(), glance(with(windy(), List.of(long1))).more());
  }

  @Test
  void theThreePointsOfAdviceAreNumbered() throws TemplateProblem {
    List<Integer> numbers =
        glance(BookFixture.night(60)).advice().stream().map(point -> point.number()).toList();
    assertEquals(List.of(1, 2, 3), numbers);
  }
}
