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
import rondure.report.layout.Pictures;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;

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
