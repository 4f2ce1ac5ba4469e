package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

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

  /** A halo's moment alone names nothing: a fifth of the light must be missing from the image. */
  @Test
  void aHaloIsHazeWhereItWidensAndTakesAFifthOfTheLight() {
    Terms calm = terms(0, 0, 0, 0);
    assertEquals(Cause.HAZE, RULE.of(calm.withHaze(0.6), calm, 0.21));
    assertEquals(Cause.NONE, RULE.of(calm.withHaze(0.6), calm, 0.19));
    assertEquals(Cause.NONE, RULE.of(calm.withHaze(0.5), calm, 0.3)); // √1.5 = 1.22
    Terms defocused = terms(1, 0, 0, 0);
    assertEquals(Cause.FOCUS, RULE.of(defocused.withHaze(0.9), calm, 0.3));
    assertEquals(Cause.HAZE, RULE.of(defocused.withHaze(1.1), calm, 0.3));
    assertEquals(Cause.FOCUS, RULE.of(defocused.withHaze(1.1), calm, 0.1));
  }
}
