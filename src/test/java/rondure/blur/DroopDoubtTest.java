package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;
import rondure.sky.SkyMotion;
import rondure.sky.Spin;

/** Only the sum of the sky's turning and the head's is seen; the sky's part has sidereal rate. */
class DroopDoubtTest {
  private static final double RATE = SkyMotion.SIDEREAL_RATE_RAD_PER_S;

  private static FrameSky frame(Spin sky, Spin creep) {
    return new FrameSky(
        Optional.of(Rotation.NONE),
        Optional.of(sky.times(RATE)),
        creep.times(RATE),
        0.01 * RATE,
        0);
  }

  @Test
  void whatTheSkyAloneExplainsIsTheSkys() {
    FrameSky calm = frame(new Spin(0.6, 0, 0.8), Spin.NONE);
    assertEquals(1, DroopDoubt.skyProbability(List.of(calm, calm, calm)));
  }

  /**
   * Counted by three million poles drawn in numpy (seed 2). The first two: a head that nods by more
   * than the sky's rate under a sky that turns near the optical axis; the same sum with the pole
   * across takes a head that rolls as well. The last: a sum of which the sky can have least.
   */
  @Test
  void polesAreCountedAsByDraws() {
    assertEquals(0.403, DroopDoubt.skyProbability(new Spin(-1.11, 0.05, -0.97)), 0.03);
    assertEquals(0.176, DroopDoubt.skyProbability(new Spin(-1.3, 0.1, -0.995)), 0.03);
    assertEquals(0.942, DroopDoubt.skyProbability(new Spin(0.3, 1.1, 0)), 0.03);
    assertEquals(0, DroopDoubt.skyProbability(new Spin(0.3, 1.6, 0)), 0.03);
  }

  @Test
  void aLongSceneTellsThePoleByItself() {
    FrameSky drooping = frame(new Spin(0.6, 0, 0.8), new Spin(0.5, 0, 0));
    assertEquals(1, DroopDoubt.skyProbability(java.util.Collections.nCopies(12, drooping)));
    assertTrue(DroopDoubt.skyProbability(List.of(drooping, drooping, drooping)) < 1);
  }
}
