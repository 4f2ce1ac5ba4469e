package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChanceLevelTest {

  /** Against the exact binomial tail: a bound from above, and not a loose one. */
  @ParameterizedTest
  @CsvSource({"20, 5, 0.05", "100, 12, 0.03", "400, 60, 0.08", "5, 5, 0.001", "60, 2, 0.01"})
  void theBoundIsJustAboveTheExactTail(int trials, int hits, double chance) {
    double exact = 1 - new BinomialDistribution(trials, chance).cumulativeProbability(hits - 1);
    double bound = ChanceLevel.logTail(trials, hits, chance);
    double log = exact > 1e-12 ? Math.log(exact) : hits * Math.log(chance);
    assertTrue(bound >= log - 1e-6, bound + " below " + log);
    assertTrue(bound < log + 4, bound + " far above " + log);
  }

  @ParameterizedTest
  @CsvSource({"0, 0, 0.1", "50, 0, 0.1", "50, 5, 0.1"})
  void noMoreThanExpectedProvesNothing(int trials, int hits, double chance) {
    assertEquals(0, ChanceLevel.logTail(trials, hits, chance));
  }
}
