package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What light that is missing says about haze (docs/method.md: 35 %, or a fifth with a halo). */
class LightMissingTest {
  private static final NamingRule RULE = new NamingRule(AttributionSettings.defaults());

  private static Halo halo(double share, double logEvidence) {
    return new Halo(share, 0.04, 30 * share, 1.5, logEvidence);
  }

  private static FrameLight.Loss loss(double mag) {
    return new FrameLight.Loss(mag, 0.03, 0, 0, 0, 8);
  }

  private static double haze(LightMissing missing) {
    return missing.hazeProbability(1, RULE);
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
    assertTrue(haze(new LightMissing(Optional.of(loss(0)), dewy, dewy)) > 0.85);
    Optional<Halo> clear = Optional.of(halo(0.03, -3));
    assertTrue(haze(new LightMissing(Optional.of(loss(0)), clear, clear)) < 0.03);
  }

  /** 0.3 mag is 24 % of the light: with a halo haze, without (cloud) none. */
  @Test
  void aSmallLossIsHazeWithAHalo() {
    Optional<Halo> clear = Optional.of(halo(0.03, -3));
    Optional<Halo> seen = Optional.of(halo(0.12, 6));
    assertTrue(haze(new LightMissing(Optional.of(loss(0.3)), seen, clear)) > 0.75);
    assertTrue(haze(new LightMissing(Optional.of(loss(0.3)), clear, clear)) < 0.2);
    assertTrue(haze(new LightMissing(Optional.of(loss(0.1)), seen, clear)) < 0.1);
  }

  @Test
  void onlyALikelyHaloIsSaidAndBooked() {
    assertEquals(
        Optional.of(Evidence.Kind.HALO_SEEN),
        LightMissing.ofHalo(Optional.of(halo(0.3, 8))).evidence().map(Evidence::kind));
    assertTrue(LightMissing.ofHalo(Optional.of(halo(0.3, 1))).evidence().isEmpty());
  }
}
