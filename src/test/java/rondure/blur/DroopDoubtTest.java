package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;
import rondure.sky.SceneSky;
import rondure.sky.SkyMotion;
import rondure.sky.Spin;
import rondure.sky.StarTracks;

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

  private static SceneSky scene(FrameSky frame, int frames, double poleErrorDeg) {
    return new SceneSky(
        SceneSky.Finding.SKY_TURNS,
        Optional.empty(),
        false,
        Optional.empty(),
        poleErrorDeg,
        Collections.nCopies(frames, frame),
        StarTracks.NONE);
  }

  @Test
  void whatTheSkyAloneExplainsIsTheSkys() {
    FrameSky calm = frame(new Spin(0.6, 0, 0.8), Spin.NONE);
    assertTrue(DroopDoubt.skyProbability(scene(calm, 3, 1)) > 0.99);
  }

  /**
   * Counted by three million poles drawn in numpy (seed 2). A head that nods by more than the sky's
   * rate under a sky that turns near the optical axis; the same with the pole across takes a head
   * that rolls as well; a sum that a small creep explains; one of which the sky can have least; the
   * sky's rate found exactly, roughly, and hardly at all; a nod by two thirds of the sky's rate
   * with the pole in the frame, a slip with it there; one without it.
   */
  @Test
  void polesAreCountedAsByDraws() {
    double sure = 0.01;
    assertEquals(0.080, DroopDoubt.skyProbability(new Spin(-1.11, 0.05, -0.97), sure), 0.02);
    assertEquals(0.024, DroopDoubt.skyProbability(new Spin(-1.3, 0.1, -0.995), sure), 0.02);
    assertEquals(0.851, DroopDoubt.skyProbability(new Spin(0.3, 1.1, 0), sure), 0.02);
    assertEquals(0, DroopDoubt.skyProbability(new Spin(0.3, 1.6, 0), sure), 0.02);
    assertEquals(0.999, DroopDoubt.skyProbability(new Spin(0.6, 0, 0.8), sure), 0.005);
    assertEquals(0.991, DroopDoubt.skyProbability(new Spin(0.6, 0, 0.8), 0.1), 0.005);
    assertEquals(0.979, DroopDoubt.skyProbability(new Spin(0.6, 0, 0.8), 0.3), 0.005);
    assertEquals(0.173, DroopDoubt.skyProbability(new Spin(0.64, 0, 1), sure), 0.02);
    assertEquals(0.252, DroopDoubt.skyProbability(new Spin(-0.223, 0.873, 0.997), sure), 0.02);
    assertEquals(0.783, DroopDoubt.skyProbability(new Spin(0.6, 0.6, 0.7), sure), 0.02);
    assertEquals(0.799, DroopDoubt.skyProbability(new Spin(0.64, 0, 1), 0.1), 0.02);
  }

  /** It wanders through the camera; where it is not found for all that, the sum stays a sum. */
  @Test
  void aLongSceneTellsThePoleByItself() {
    FrameSky drooping = frame(new Spin(0.6, 0, 0.8), new Spin(0.5, 0, 0));
    assertEquals(1, DroopDoubt.skyProbability(scene(drooping, 12, 1)));
    assertTrue(DroopDoubt.skyProbability(scene(drooping, 12, 40)) < 0.9);
    assertTrue(DroopDoubt.skyProbability(scene(drooping, 3, 1)) < 0.9);
  }

  /** Densities of an axis: those of a head that gives way, over a calm sky's, have the mean 1. */
  @Test
  void axesOfHeadsThatGiveWayAreAsManyAsAxesOfTheSky() {
    int count = 400;
    double mean = 0;
    for (int i = 0; i < count; i++) {
      double z = 2 * (i + 0.5) / count - 1;
      double turn = i * Math.PI * (3 - Math.sqrt(5));
      double across = Math.sqrt(1 - z * z);
      Spin axis = new Spin(across * Math.cos(turn), across * Math.sin(turn), z);
      mean += Math.exp(-DroopDoubt.calmLogOdds(axis)) / count;
    }
    assertEquals(1, mean, 0.05);
  }

  /** The sky turns about any axis; heads nod about the one to the right. */
  @Test
  void anAxisToTheRightSpeaksForANodAndOneAwayFromThePictureForTheSky() {
    double nod = DroopDoubt.calmLogOdds(new Spin(3, 0.1, 0.1));
    double aside = DroopDoubt.calmLogOdds(new Spin(0.6, 0.3, 0.7));
    assertTrue(nod < -1, () -> "" + nod);
    assertTrue(aside > 0.5, () -> "" + aside);
    assertEquals(nod, DroopDoubt.calmLogOdds(new Spin(-6, -0.2, -0.2)), 0.01);
  }
}
