package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Odds of causes from a budget and its errors. */
class BudgetOddsTest {
  private static final BudgetOdds ODDS =
      new BudgetOdds(AttributionSettings.defaults(), Leeway.fitted());
  private static final CoreReading SURE = new CoreReading(1, 2.4, 1, 1, 1);

  private static FrameBudget budget(Terms sky, double errorPx2, Optional<Terms> ifDefocused) {
    Terms error = new Terms(0, errorPx2, errorPx2, errorPx2, errorPx2, 0, 0);
    UniformSmear none = new UniformSmear(0, 0.01, 0, false);
    return new FrameBudget(
        Rivals.none(of(sky, error)),
        ifDefocused.map(terms -> Rivals.none(of(terms, error))),
        0,
        0,
        none,
        0,
        1);
  }

  private static Budget of(Terms sky, Terms error) {
    return new Budget(sky, sky, error, 0, 0, 0, 1, 10, false, java.util.Optional.empty());
  }

  private static Map<Cause, Double> odds(FrameBudget budget, CoreReading core) {
    Map<Cause, Double> odds = ODDS.of(budget, core, LightMissing.NOTHING);
    double sum = odds.values().stream().mapToDouble(p -> p).sum();
    assertEquals(1, sum, 1e-9);
    return odds;
  }

  @Test
  void aClearBudgetNamesItsCause() {
    Terms trailing = new Terms(1, 0.02, 1.5, 0.02, 0.05, 0, 0);
    assertTrue(odds(budget(trailing, 0.02, Optional.empty()), SURE).get(Cause.TRAILING) > 0.9);
  }

  @Test
  void aSharpFrameIsNotBlamed() {
    Terms calm = new Terms(1, 0.02, 0.1, 0.0, 0.03, 0, 0);
    assertTrue(odds(budget(calm, 0.02, Optional.empty()), SURE).get(Cause.NONE) > 0.9);
  }

  @Test
  void equalCausesStayUndecidedBetweenThem() {
    Terms both = new Terms(1, 1, 1, 0, 0, 0, 0);
    Map<Cause, Double> odds = odds(budget(both, 0.05, Optional.empty()), SURE);
    assertTrue(odds.get(Cause.FOCUS) < 0.6 && odds.get(Cause.TRAILING) < 0.6, odds.toString());
    assertTrue(odds.get(Cause.FOCUS) + odds.get(Cause.TRAILING) > 0.9, odds.toString());
  }

  @Test
  void coreAgainstDefocusIsMixedByTheTrustInTheCore() {
    Terms calm = new Terms(2, 0, 0.05, 0, 0, 0, 0);
    Terms soft = new Terms(1, 1, 0.05, 0, 0, 0, 0);
    FrameBudget both = budget(calm, 0.02, Optional.of(soft));
    Map<Cause, Double> odds = odds(both, new CoreReading(2, 3.3, 1, 0.5, 1));
    assertEquals(odds.get(Cause.NONE), odds.get(Cause.FOCUS), 0.05);
    assertTrue(odds.get(Cause.NONE) < 0.6, odds.toString());
  }

  /**
   * Trails of 0.522 cores widen by 1.234 if the core's wings count; the Gaussian of its
   * half-maximum width (0.73 of the second moment, a Moffat profile of exponent 4 or so) they widen
   * by 1.31: on which side of a quarter they are is a matter of what one calls the core.
   */
  @Test
  void whereWingsDecideWhetherStarsAreWideWhatOneSeesCountsButNotSurely() {
    FrameBudget near = budget(new Terms(1, 0, 0.522, 0, 0, 0, 0), 0.005, Optional.empty());
    Map<Cause, Double> winged = odds(near, new CoreReading(1, 2.0, 1, 1, 0.73));
    assertTrue(winged.get(Cause.TRAILING) > 0.6 && winged.get(Cause.TRAILING) < 0.9, "" + winged);
    assertTrue(winged.get(Cause.NONE) + winged.get(Cause.TRAILING) > 0.95, "" + winged);
  }

  /**
   * Of the excess 0.5625 at the limit, 0.02 cores in each of four terms, 5 % of the trail and 6 %
   * of the core are uncertain, 0.058 together: 1.24 and 1.26 are 0.43 standard errors off it.
   */
  @Test
  void nearTheLimitNothingIsCertain() {
    double below = odds(trails(1.24), SURE).get(Cause.NONE);
    double above = odds(trails(1.26), SURE).get(Cause.TRAILING);
    assertEquals(0.667, below, 0.05);
    assertEquals(0.667, above, 0.05);
    assertTrue(odds(trails(1.15), SURE).get(Cause.NONE) > 0.99);
    assertTrue(odds(trails(1.35), SURE).get(Cause.TRAILING) > 0.99);
  }

  private static FrameBudget trails(double widening) {
    Terms terms = new Terms(1, 0, widening * widening - 1, 0, 0, 0, 0);
    return budget(terms, 0.001, Optional.empty());
  }
}
