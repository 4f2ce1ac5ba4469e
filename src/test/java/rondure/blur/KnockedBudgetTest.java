package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import rondure.sim.NightPlan;
import rondure.testing.SimNight;

/** What a knock in one frame leaves to the budgets of its scene; rendered and measured. */
class KnockedBudgetTest {
  private static final int KNOCKED = 1;

  /**
   * Each image of a knocked frame has a part of the trail only: with the whole trail taken off, its
   * stars would look sharper than the lens can draw, and the others out of focus.
   */
  @Test
  void theTwoImagesOfAKnockedFrameDoNotLowerTheCore() {
    NightPlan plan =
        SimNight.plan(
            "shots",
            "[{\"count\": 4, \"exposureSeconds\": 80, \"intervalSeconds\": 95, \"iso\": 400}]",
            "events",
            "[{\"kind\": \"knock\", \"frame\": 2, \"atShare\": 0.45, \"shiftXPx\": 9,"
                + " \"shiftYPx\": 4, \"ringPx\": 0, \"ringHz\": 5, \"ringDecaySeconds\": 1}]",
            "camera.widthPx",
            "1000");
    BudgetNights.Night night = BudgetNights.rendered(plan);
    assertTrue(DoubleImage.of(night.evidence().frames().get(KNOCKED).field()).isPresent());
    CoreReading core = night.budget().shared().orElseThrow().core();
    assertEquals(1, core.px2() / night.truths().get(0).sharesPx2().core(), 0.1);
    assertTrue(core.realProbability() > 0.9, "real " + core.realProbability());
  }
}
