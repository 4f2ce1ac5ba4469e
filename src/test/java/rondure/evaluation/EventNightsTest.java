package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.night.EventKind;

/** Scheduled events of simulated nights, without pixels, are told; quiet nights tell of none. */
class EventNightsTest {
  /** Least share found, and most false events in 500 quiet frames: the project's aims. */
  private static final double FOUND = 0.95;

  private static final double FALSE_IN_500 = 1;

  /** Kinds with an aim. */
  private static final List<EventKind> AIMED =
      List.of(
          EventKind.KNOCK,
          EventKind.GUSTS,
          EventKind.DROOP,
          EventKind.FOCUS_CREEP,
          EventKind.CLOUD,
          EventKind.DEW,
          EventKind.SKY_BRIGHTER);

  /** Kinds that begin or end between one frame and the next. */
  private static final List<EventKind> SUDDEN =
      List.of(EventKind.KNOCK, EventKind.GUSTS, EventKind.CLOUD);

  @Test
  void aNightOfManyThingsTellsEachAndNoOther() {
    EventJudge judge = new EventJudge();
    judge.add(EventNight.draw(7, EventNight.Theme.MIXED, 45));
    assertEquals(4, judge.tallies().size(), judge.table());
    judge
        .tallies()
        .forEach((kind, tally) -> assertEquals(tally.scheduled, tally.found, kind + report(judge)));
    assertEquals(0, judge.falsePer500(), report(judge));
    assertEquals(0, judge.falseSeries(), report(judge));
  }

  @Test
  void aQuietNightTellsOfNothing() {
    EventJudge judge = new EventJudge();
    judge.add(EventNight.draw(7, EventNight.Theme.CALM, 45));
    assertEquals(List.of(), judge.faults());
  }

  @Test
  @Tag("thorough")
  void eventsAreFoundAndDatedAndQuietFramesStayQuiet() throws IOException {
    EventJudge judge = new EventJudge();
    for (EventNight.Theme theme : EventNight.Theme.values()) {
      for (int n = 0; n < Integer.getInteger("rondure.eventNights", 20); n++) {
        judge.add(EventNight.draw(9_000 + n, theme, 300));
      }
    }
    Path out = Path.of("target", "evaluation", "events.txt");
    Files.createDirectories(out.getParent());
    Files.writeString(out, report(judge));
    for (EventKind kind : AIMED) {
      EventJudge.Tally tally = judge.tallies().get(kind);
      assertTrue(tally.foundShare() >= FOUND, kind + " " + report(judge));
    }
    for (EventKind kind : SUDDEN) {
      EventJudge.Tally tally = judge.tallies().get(kind);
      assertTrue(Math.min(tally.first, tally.last) >= FOUND * tally.found, report(judge));
    }
    assertTrue(judge.falsePer500() <= FALSE_IN_500, report(judge));
    assertEquals(0, judge.falseSeries(), report(judge));
  }

  private static String report(EventJudge judge) {
    return judge.table() + String.join("\n", judge.faults()) + "\n";
  }
}
