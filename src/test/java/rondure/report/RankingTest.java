package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.picture.Mark;

class RankingTest {
  private static final ReportSettings SETTINGS = ReportSettings.defaults("0.1.0", List.of());

  @Test
  void aSmallNightGivesEveryMeasuredFrameAnEntry() {
    NightBook book = BookFixture.night(30);
    long measured = book.frames().stream().filter(Ranking::isMeasured).count();
    assertEquals(measured, Ranking.fullEntries(book, SETTINGS).size());
  }

  @Test
  void aLargeNightShowsBestWorstAndOneOfEachKind() {
    NightBook book = BookFixture.night(200);
    Set<String> chosen = Ranking.fullEntries(book, SETTINGS);
    assertEquals(SETTINGS.fullEntriesUpTo(), chosen.size());
    for (Scene scene : book.scenes()) {
      List<NightFrame> ordered = Ranking.bestFirst(book, scene);
      assertTrue(chosen.contains(ordered.get(0).file()), "best of scene " + scene.number());
      assertTrue(chosen.contains(ordered.get(ordered.size() - 1).file()), "worst");
    }
    Set<Mark> all =
        book.frames().stream()
            .filter(Ranking::isMeasured)
            .map(Mark::of)
            .collect(Collectors.toSet());
    Set<Mark> shown =
        book.frames().stream()
            .filter(frame -> chosen.contains(frame.file()))
            .map(Mark::of)
            .collect(Collectors.toSet());
    assertEquals(all, shown);
  }

  @Test
  void roundStarsComeBeforeStretchedOnesOfTheSameWidth() {
    NightBook book = BookFixture.night(60);
    List<NightFrame> ordered = Ranking.bestFirst(book, book.scenes().get(0));
    for (int i = 1; i < ordered.size(); i++) {
      NightFrame better = ordered.get(i - 1);
      NightFrame worse = ordered.get(i);
      if (Ranking.isKeep(better) == Ranking.isKeep(worse)) {
        assertTrue(
            Ranking.longAxisPx(better.shape().orElseThrow())
                <= Ranking.longAxisPx(worse.shape().orElseThrow()));
      } else {
        assertTrue(Ranking.isKeep(better));
      }
    }
  }
}
