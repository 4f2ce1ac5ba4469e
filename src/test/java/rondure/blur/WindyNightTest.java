package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import rondure.sky.SceneSky;

class WindyNightTest {
  private static final int FRAMES = 6;

  /** A gust in each of six frames at 135 mm: no two of its places lie on one steady motion. */
  private static final int WIND_ALL_NIGHT = 4;

  /** The truth is the simulator's: the sky's own second moment, px². */
  @Test
  void theSkyShowsInTheMeanWhereWindMovedEveryFrame() {
    BudgetNights.Night night = BudgetNights.registered(RandomNights.plan(WIND_ALL_NIGHT, FRAMES));
    assertEquals(SceneSky.Finding.SKY_TURNS, night.evidence().sky().finding());
    SceneBudget budget = night.budget();
    CoreReading core = budget.shared().orElseThrow().core();
    for (int i = 0; i < FRAMES; i++) {
      double found = budget.frames().get(i).orElseThrow().likelier(core).sky().trailingPx2();
      double truth = night.truths().get(i).sharesPx2().trailing();
      assertEquals(1, Math.sqrt(found / truth), 0.05, "frame " + i);
    }
  }
}
