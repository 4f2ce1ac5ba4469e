package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The expectation of focus yields to the field, and holds where the field says nothing. */
class ProvenDefocusTest {
  private static final int FRAMES = 6;

  /** A steady defocus of a disc as wide as the core, on a lens with a curved field. */
  private static final int PROVEN = 67;

  /** A gust; the frames beside it are sharp, and core and disc look alike in them. */
  private static final int SILENT = 113;

  private static BudgetNights.Night night(int number) {
    return BudgetNights.registered(RandomNights.plan(number, FRAMES));
  }

  @Test
  void aDefocusPlainOverTheFieldIsFoundWhole() {
    BudgetNights.Night night = night(PROVEN);
    SceneBudget budget = night.budget();
    CoreReading core = budget.shared().orElseThrow().core();
    double found = budget.frames().get(0).orElseThrow().likelier(core).sky().focusPx2();
    double real = night.truths().get(0).sharesPx2().focus();
    assertEquals(1, Math.sqrt(found / real), 0.07);
  }

  @Test
  void sharpFramesAreNotBlamedWhereTheFieldSaysNothing() {
    BudgetNights.Night night = night(SILENT);
    SceneBudget budget = night.budget();
    CoreReading core = budget.shared().orElseThrow().core();
    Budget sharp = budget.frames().get(0).orElseThrow().likelier(core);
    NamingRule rule = new NamingRule(AttributionSettings.defaults());
    assertEquals(Cause.NONE, rule.of(sharp.sky(), sharp.edge(), 0));
    assertTrue(core.px2() > 0.75 * night.truths().get(0).sharesPx2().core(), "core " + core);
  }
}
