package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What light that is missing says about haze (docs/method.md: 35 %, or a fifth with a halo). */
class LightMissingTest {
  private static Halo halo(double share, double logEvidence) {
    return new Halo(share, 0.04, 30 * share, 1.5, logEvidence);
  }

  private static FrameLight.Loss loss(double mag) {
    return new FrameLight.Loss(mag, 0.03, 0, 0, 0, 8, 0);
  }

  private static double haze(LightMissing missing) {
    return missing.hazeProbability();
  }

  @Test
  void aStrongHaloIsHazeInALoneFrameAndAFaintOneIsNot() {
    assertTrue(haze(LightMissing.ofHalo(Optional.of(halo(0.3, 8)))) > 0.9);
    assertTrue(haze(LightMissing.ofHalo(Optional.of(halo(0.03, 8)))) < 0.1);
    double unsure = haze(LightMissing.ofHalo(Optional.of(halo(0.3, 2.2))));
    assertTrue(unsure > 0.35 && unsure < 0.65, "" + unsure);
    assertTrue(haze(LightMissing.ofHalo(Optional.of(halo(0.2, -2)))) < 0.05);
    assertEquals(0, haze(LightMissing.NOTHING));
  }

  /** The glow of a lens: 38 % of the light, as wide as 8 px. */
  @Test
  void aNarrowGlowThatDoesNotChangeMayBeTheLens() {
    Optional<Halo> glow = Optional.of(new Halo(0.38, 0.04, 4.6, 0.6, 15));
    assertEquals(8.2, glow.get().fwhmPx(), 0.05); // 2.3548 √(4.6 / 0.38)
    assertTrue(haze(LightMissing.ofHalo(glow)) < 0.35);
    assertTrue(haze(new LightMissing(Optional.of(loss(0)), glow, glow)) < 0.35);
  }

  /** All frames alike dewy: none lost light beside the others, and all have the halo. */
  @Test
  void dewThatNeverClearsIsToldByTheClearestFramesHalo() {
    Optional<Halo> dewy = Optional.of(halo(0.25, 7));
    double all = haze(new LightMissing(Optional.of(loss(0)), dewy, dewy));
    assertTrue(all > 0.78, "" + all);
    Optional<Halo> clear = Optional.of(halo(0.03, -3));
    assertTrue(haze(new LightMissing(Optional.of(loss(0)), clear, clear)) < 0.03);
  }

  /** 0.3 mag is 24 % of the light, the frame's own halo included; 0.47 mag would be 35 %. */
  @Test
  void aSmallLossIsNoHazeWhateverHaloItLeft() {
    Optional<Halo> clear = Optional.of(halo(0.03, -3));
    Optional<Halo> seen = Optional.of(halo(0.12, 6));
    assertTrue(haze(new LightMissing(Optional.of(loss(0.3)), seen, clear)) < 0.2);
    assertTrue(haze(new LightMissing(Optional.of(loss(0.55)), seen, clear)) > 0.8);
  }

  /**
   * Three frames that lose 0.17 mag from one to the next: before them more than r times what they
   * show was lost with probability 1 / (1 + r), less what would be more than 1.5 mag in all.
   */
  @Test
  void aSteadyFallHardlyBeganWithTheFirstOfThreeFrames() {
    double fall = 0.34;
    double most = 1.5 / fall - 1;
    assertEquals(most * fall, LightMissing.beforeMag(fall, 0), 1e-9);
    assertEquals(0, LightMissing.beforeMag(fall, 1), 1e-9);
    double rest = 1 / (1 + most);
    assertEquals(fall, LightMissing.beforeMag(fall, (0.5 - rest) / (1 - rest)), 1e-9); // r = 1
    assertEquals(0, LightMissing.beforeMag(0, 0.1));
    double last =
        haze(new LightMissing(Optional.of(falling(fall)), Optional.empty(), Optional.empty()));
    double first =
        haze(new LightMissing(Optional.of(falling(0)), Optional.empty(), Optional.empty()));
    assertTrue(last > 0.4 && last < 0.6, "" + last);
    assertTrue(first > 0.1 && first < 0.4, "" + first);
  }

  private static FrameLight.Loss falling(double mag) {
    return new FrameLight.Loss(mag, 0.03, 0, 0, 0, 3, 0.34);
  }

  @Test
  void onlyALikelyHaloIsSaidAndBooked() {
    assertEquals(
        Optional.of(Evidence.Kind.HALO_SEEN),
        LightMissing.ofHalo(Optional.of(halo(0.3, 8))).evidence().map(Evidence::kind));
    assertTrue(LightMissing.ofHalo(Optional.of(halo(0.3, 1))).evidence().isEmpty());
  }
}
