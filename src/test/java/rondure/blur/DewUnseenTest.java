package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** A lone sharp frame may be dewy where its average star could not show a halo. */
class DewUnseenTest {
  private static final Map<Cause, Double> SHARP = Mixing.certain(Cause.NONE);

  private static double haze(double logEvidence, double px2) {
    return Haze.unseen(SHARP, new Halo(0.1, 0.05, px2, 1, logEvidence)).get(Cause.HAZE);
  }

  /** Bayes by hand: a tenth unseen, of the rest 0.5 L / (1 + 0.5 L) dew. */
  @Test
  void theLessAHaloWouldShowTheLikelierIsDew() {
    double wide = 0.1 * Math.pow(14 / 2.3548, 2);
    assertEquals(0.1 + 0.9 / 3, haze(0, wide), 0.001);
    double clear = 0.5 * Math.exp(-3);
    assertEquals(0.1 + 0.9 * clear / (1 + clear), haze(-3, wide), 0.001);
    assertEquals(haze(0, wide), haze(5, wide), 0.01);
  }

  @Test
  void aGlowThatIsSeenAndAsNarrowAsALenssIsNotDew() {
    double narrow = 0.1 * Math.pow(6 / 2.3548, 2);
    assertTrue(haze(8, narrow) < 0.12);
    assertTrue(haze(-1, narrow) > 0.2);
  }
}
