package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** A lone sharp frame may be dewy where its average star could not show a halo. */
class DewUnseenTest {
  private static final Map<Cause, Double> SHARP = Mixing.certain(Cause.NONE);

  private static final double WIDE_PX2 = Math.pow(14 / 2.3548, 2);

  private static double haze(double share, double error, double logEvidence, double sigma2) {
    Halo halo = new Halo(share, error, share * sigma2, 1, logEvidence);
    return Haze.unseen(SHARP, halo).get(Cause.HAZE);
  }

  /**
   * Bayes by hand: a tenth unseen, of the rest 0.5 L / (1 + 0.5 L) dew; of the shares that were
   * likely before, 0 to 0.5, those above 1 − √0.65 = 0.194 make haze, half of what is likely now.
   */
  @Test
  void theLessAHaloWouldShowTheLikelierIsDew() {
    double half = 0.5 / (1 - 0.194 / 0.5);
    for (double log : new double[] {0, -3}) {
      double dew = 0.5 * half * Math.exp(log);
      assertEquals(0.1 + 0.9 * dew / (1 + dew), haze(0.194, 0.05, log, WIDE_PX2), 0.001);
    }
    assertEquals(0.1 + 0.9 / 3, haze(0.3, 0.05, 5, WIDE_PX2), 0.01);
  }

  /** A halo of 8 ± 3 % of the light is certain, and far from taking a third of it. */
  @Test
  void aFaintHaloIsNoHaze() {
    assertTrue(haze(0.08, 0.03, 5, WIDE_PX2) < 0.12);
  }

  @Test
  void aGlowThatIsSeenAndAsNarrowAsALenssIsNotDew() {
    double narrow = Math.pow(6 / 2.3548, 2);
    assertTrue(haze(0.3, 0.1, 8, narrow) < 0.12);
    assertTrue(haze(0.3, 0.1, -1, narrow) > 0.2);
  }
}
