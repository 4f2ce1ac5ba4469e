package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The rule by which causes are named (docs/method.md): 1.25 in width, 1.6 at the edge, 35 %. */
class NamingRuleTest {
  private static final NamingRule RULE = new NamingRule(AttributionSettings.defaults());

  /** Core 1 px²: widening √(1 + excess). */
  private static Terms terms(double focus, double trailing, double tripod, double lens) {
    return new Terms(1, focus, trailing, tripod, lens, 0, 0);
  }

  @Test
  void theLargestCauseIsNamedFromAQuarterOfWidening() {
    Terms calm = terms(0, 0, 0, 0);
    assertEquals(Cause.NONE, RULE.of(terms(0.3, 0.26, 0, 0), calm, 0)); // √1.56 = 1.249
    assertEquals(Cause.FOCUS, RULE.of(terms(0.3, 0.27, 0, 0), calm, 0)); // √1.57 = 1.253
    assertEquals(Cause.TRAILING, RULE.of(terms(0.3, 0.5, 0.4, 0), calm, 0));
    assertEquals(Cause.TRIPOD, RULE.of(terms(0.3, 0.3, 0.4, 0), calm, 0));
  }

  @Test
  void theLensIsNamedForTheOuterFifthAloneFromSixtyPerCent() {
    Terms calm = terms(0, 0, 0, 0.3);
    assertEquals(Cause.NONE, RULE.of(calm, terms(0, 0, 0, 1.55), 0)); // √2.55 = 1.597
    assertEquals(Cause.LENS, RULE.of(calm, terms(0, 0, 0, 1.57), 0)); // √2.57 = 1.603
    assertEquals(Cause.NONE, RULE.of(calm, terms(0, 1.6, 0, 1.5), 0));
  }

  @Test
  void lostLightIsHazeWhereNothingWidens() {
    Terms calm = terms(0, 0, 0, 0);
    assertEquals(Cause.NONE, RULE.of(calm, calm, 0.34));
    assertEquals(Cause.HAZE, RULE.of(calm, calm, 0.36));
    assertEquals(Cause.FOCUS, RULE.of(terms(1, 0, 0, 0), calm, 0.5));
  }

  /** However wide a halo: what counts is the light in it. */
  @Test
  void aHaloNamesNothingByItsMoment() {
    Terms calm = terms(0, 0, 0, 0);
    assertEquals(Cause.NONE, RULE.of(calm.withHaze(3), calm.withHaze(3), 0.34));
    assertEquals(Cause.HAZE, RULE.of(calm.withHaze(3), calm, 0.36));
    assertEquals(Cause.FOCUS, RULE.of(terms(1, 0, 0, 0).withHaze(3), calm, 0.36));
  }

  /**
   * Of a halo of share s, so many times as wide as its core, half the peak lies a quarter farther
   * out than the core's from s = 0.76, 0.71, 0.72, 0.79 on (scipy.optimize.brentq, 2026-11-25): a
   * third of the light goes first, and then it lies 7 % farther out at most.
   */
  @Test
  void aHaloThatWidensTheStarAtHalfItsHeightHoldsMostOfItsLight() {
    double[][] cases = {{1.5, 0.76}, {1.8, 0.71}, {2, 0.72}, {3, 0.79}};
    for (double[] one : cases) {
      assertTrue(halfWidth(one[1] - 0.02, one[0]) < 1.25, one[0] + "");
      assertTrue(halfWidth(one[1] + 0.01, one[0]) > 1.25, one[0] + "");
      assertTrue(halfWidth(0.35, one[0]) < 1.075, one[0] + "");
    }
  }

  /** Radius at half the peak of (1 - s) core + s halo over the core's, by steps of 1/1000. */
  private static double halfWidth(double share, double times) {
    double peak = 1 - share + share / (times * times);
    int step = 0;
    for (double light = peak; light > peak / 2 && step < 10_000; step++) {
      double square = Math.pow(step * Math.sqrt(2 * Math.log(2)) / 1000, 2) / 2;
      light =
          (1 - share) * Math.exp(-square)
              + share / (times * times) * Math.exp(-square / (times * times));
    }
    return step / 1000.0;
  }
}
