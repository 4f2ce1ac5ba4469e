package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
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

  @Test
  void theTightestFramesAreAmongThoseToKeep() throws TemplateProblem {
    List<NightFrame> frames = new ArrayList<>(some(Ranking::isKeep, 1));
    frames.addAll(some(f -> Ranking.isMeasured(f) && !Ranking.isKeep(f), 3));
    GlanceView view = glance(BookFixture.book("ridge", frames));
    assertEquals(1, view.best().size());
    assertTrue(view.verdict().startsWith("Keep 1 of 4 frames: its stars"), view.verdict());
  }

  @Test
  void whereNothingIsKeptTheBestOfTheRestAreNamed() throws TemplateProblem {
    List<NightFrame> frames = some(f -> Ranking.isMeasured(f) && !Ranking.isKeep(f), 3);
    assertEquals(3, glance(BookFixture.book("ridge", frames)).best().size());
  }

  /** Each measured frame counts once, by the largest use it serves. */
  @Test
  void theFirstPageTellsHowManyFramesServeWhichUse() throws TemplateProblem {
    NightBook book = BookFixture.night(60);
    int[] counts = new int[OutputUse.values().length];
    book.frames().stream()
        .filter(Ranking::isMeasured)
        .forEach(f -> counts[f.usefulness().orElseThrow().largestUse().ordinal()]++);
    String said = glance(book).uses().get(0);
    assertTrue(said.contains("large print: " + counts[0] + ";"), said);
    assertTrue(said.contains("a screen at most: " + counts[1] + ";"), said);
    assertTrue(said.contains("a web page at most: " + counts[2] + ";"), said);
    assertTrue(said.contains("at none of these sizes: " + counts[3] + "."), said);
    List<NightFrame> lost = some(f -> f.status() == FrameStatus.UNREADABLE, 2);
    assertEquals(List.of(), glance(BookFixture.book("ridge", lost)).uses());
  }

  @Test
  void eachOfSeveralNightsHasItsSentence() throws TemplateProblem {
    assertEquals(List.of(), glance(BookFixture.night(20)).nights());
    NightBook book = BookFixture.night(120);
    List<String> nights = glance(book).nights();
    assertEquals(2, nights.size());
    for (int i = 0; i < 2; i++) {
      NightSummary night = book.nights().get(i);
      String counts = "keep " + night.keepCount() + " of " + night.frameCount() + " frames.";
      assertTrue(nights.get(i).contains(counts), nights.get(i));
      assertTrue(nights.get(i).startsWith("Night of "), nights.get(i));
    }
  }

  /** Nothing kept and no cause: that is no night to repeat. */
  @Test
  void framesThatAreNotKeptWithoutACauseAreNeitherPraisedNorToBeRepeated() throws TemplateProblem {
    List<NightFrame> frames =
        some(f -> Mark.of(f) == Mark.NONE, 4).stream().map(BookFixture::notKept).toList();
    GlanceView view = glance(BookFixture.book("ridge", frames));
    assertTrue(view.verdict().startsWith("None of 4 frames"), view.verdict());
    assertTrue(view.verdict().contains("stars wider than the best"), view.verdict());
    String advice = String.join(" ", view.advice());
    assertTrue(!advice.contains("Do the same again"), advice);
    // The fixture's sharp frames: 0.12 of 0.24 px² beyond the core, more than half, by the lens.
    assertTrue(advice.contains("4 frames not to keep"), advice);
    assertTrue(advice.contains("lens edges"), advice);
  }

  @Test
  void filesThatCannotBeReadAreNoMatterOfExposure() throws TemplateProblem {
    List<NightFrame> frames = some(f -> f.status() == FrameStatus.UNREADABLE, 2);
    GlanceView view = glance(BookFixture.book("ridge", frames));
    assertTrue(view.advice().get(0).contains("copy it again"), view.advice().toString());
    List<NightFrame> dim = some(f -> f.status() == FrameStatus.TOO_FEW_STARS, 1);
    String advice = glance(BookFixture.book("ridge", dim)).advice().get(0);
    assertTrue(advice.contains("exposure"), advice);
  }
}
