package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.blur.AttributionSettings;
import rondure.blur.SceneAttribution;

/** Focus tests within simulated nights, without pixels, judged as the program judges nights. */
class SeriesNightsTest {
  private static final SceneAttribution ATTRIBUTION =
      new SceneAttribution(AttributionSettings.defaults());

  /** Least share of series whose minimum is within twice the stated error: the project's aim. */
  private static final double HELD = 0.9;

  private static final double FOUND = 0.9;

  /** Of 29 frames, the test from the 12th to the 17th, and few stars: quick. */
  private static final long SMALL = 25;

  @Test
  void aTestWithinANightIsFoundWholeAndIsNoEvent() {
    SeriesJudge judge = new SeriesJudge();
    judge.add(SeriesNight.draw(SMALL, SeriesNight.Kind.RETURNING), ATTRIBUTION);
    assertEquals(1, judge.whole, report(judge));
    assertEquals(1, judge.held, report(judge));
    assertEquals(0, judge.falseSeries, report(judge));
    assertEquals(0, judge.eventsOfTest, report(judge));
  }

  @Test
  @Tag("thorough")
  void testsAreFoundAndHoldTheTruthAndNothingElseIsTold() throws IOException {
    SeriesJudge all = new SeriesJudge();
    List<String> text = new ArrayList<>();
    for (SeriesNight.Kind kind : SeriesNight.Kind.values()) {
      SeriesJudge judge = new SeriesJudge();
      for (int n = 0; n < Integer.getInteger("rondure.seriesNights", 10); n++) {
        SeriesNight night = SeriesNight.draw(5_000 + n, kind);
        judge.add(night, ATTRIBUTION);
      }
      all.add(judge);
      text.add(kind + " " + report(judge));
    }
    text.add("ALL " + report(all));
    Path out = Path.of("target", "evaluation", "series.txt");
    Files.createDirectories(out.getParent());
    Files.writeString(out, String.join("\n", text));
    assertTrue(all.found >= FOUND * all.nights, report(all));
    assertTrue(all.held >= HELD * all.curves, report(all));
    assertEquals(0, all.falseSeries, report(all));
    assertTrue(all.sidesRight >= 0.95 * all.sidesTold, report(all));
    assertTrue(all.eventsOfTest <= 0.05 * all.nights, report(all));
  }

  private static String report(SeriesJudge judge) {
    return judge.table() + String.join("\n", judge.faults) + "\n";
  }
}
