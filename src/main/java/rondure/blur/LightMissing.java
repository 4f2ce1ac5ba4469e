package rondure.blur;

import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Light that a star's image misses: what it lost beside the scene's clear frames, what stands in a
 * halo, and what dew that makes a halo takes besides. The last cannot be seen: it is taken to be as
 * much again, give or take e^±0.5.
 *
 * @param loss beside the scene's clear frames
 * @param own the frame's halo
 * @param clear the usual halo of the clear frames, or of this one where none is known
 */
record LightMissing(Optional<FrameLight.Loss> loss, Optional<Halo> own, Optional<Halo> clear) {

  static final LightMissing NOTHING =
      new LightMissing(Optional.empty(), Optional.empty(), Optional.empty());

  /** Draws that {@link #drawn} knows. */
  static final int DRAWS = 600;

  /** Of clear nights, and of frames that lost light, so many have a halo before one looks. */
  private static final double USUAL = 0.1;

  private static final double WHERE_LIGHT_IS_LOST = 0.7;

  /** From here a halo is said to be there and its second moment is booked. */
  static final double SAID_FROM = 0.5;

  private static final double LOST_MAG = 0.1;
  private static final double SURE_SIGMAS = 3;
  private static final double BESIDES_SPREAD = 0.5;
  private static final int NORMALS = 3;
  private static final double[] CHANCE = chance();

  /** Three standard normal numbers for each draw, always the same. */
  private static double[] chance() {
    SplittableRandom random = new SplittableRandom(20_251_125);
    double[] chance = new double[DRAWS * NORMALS];
    for (int i = 0; i < chance.length; i++) {
      chance[i] = random.nextGaussian();
    }
    return chance;
  }

  /**
   * One of the cases that may be.
   *
   * @param share of the light that the star's image misses
   * @param haloPx2 second moment that the halo adds
   */
  record Drawn(double share, double haloPx2) {}

  static LightMissing of(FrameLight light) {
    return new LightMissing(light.loss(), light.halo(), light.clearHalo());
  }

  /** As a frame alone tells. */
  static LightMissing ofHalo(Optional<Halo> halo) {
    return new LightMissing(Optional.empty(), halo, halo);
  }

  LightMissing withoutLoss() {
    return ofHalo(own);
  }

  /** Probability that the frame has a halo that is not the lens's. */
  double haloProbability() {
    boolean dimmed =
        loss.filter(l -> l.lossMag() > LOST_MAG && l.lossMag() > SURE_SIGMAS * l.errorMag())
            .isPresent();
    return own.map(
            halo -> dimmed ? halo.probability(WHERE_LIGHT_IS_LOST) : halo.dewProbability(USUAL))
        .orElse(0.0);
  }

  /** What is said where a halo is likelier than none. */
  Optional<Evidence> evidence() {
    return own.filter(halo -> haloProbability() >= SAID_FROM)
        .map(halo -> Map.of("haloPercent", 100 * halo.share()))
        .map(values -> new Evidence(Evidence.Kind.HALO_SEEN, values));
  }

  /**
   * @param draw from 0
   * @param normal how far off the loss is, in its errors
   */
  Drawn drawn(int draw, double normal) {
    double lost = loss.map(l -> lostShare(l, normal)).orElse(0.0);
    double off = CHANCE[draw * NORMALS];
    double luck = Excess.normalShare(CHANCE[draw * NORMALS + 1]);
    double besides = Math.exp(BESIDES_SPREAD * CHANCE[draw * NORMALS + 2]);
    Optional<Halo> base = loss.isPresent() ? clear : own;
    double baseShare =
        base.filter(halo -> luck < halo.dewProbability(USUAL)).map(h -> h.share(off)).orElse(0.0);
    double kept = (1 - lost) * (1 - baseShare) * (1 - Math.min(0.9, besides * baseShare));
    double halo =
        luck < haloProbability() ? own.map(h -> h.px2() * h.share(off) / h.share()).orElse(0.0) : 0;
    return new Drawn(1 - kept, halo);
  }

  private static double lostShare(FrameLight.Loss loss, double normal) {
    double error = Math.hypot(loss.errorMag(), Haze.LEAST_ERROR_MAG);
    return 1 - Math.pow(10, -0.4 * (loss.lossMag() + normal * error));
  }

  /**
   * Probability that what is missing is called haze where nothing else widens the stars.
   *
   * @param corePx2 second moment of the core
   */
  double hazeProbability(double corePx2, NamingRule rule) {
    if (loss.isEmpty() && own.isEmpty()) {
      return 0;
    }
    int hazy = 0;
    for (int draw = 0; draw < DRAWS; draw++) {
      Drawn drawn = drawn(draw, CHANCE[(DRAWS - 1 - draw) * NORMALS + 2]);
      Terms terms = new Terms(corePx2, 0, 0, 0, 0, drawn.haloPx2(), 0);
      hazy += rule.of(terms, terms, drawn.share()) == Cause.HAZE ? 1 : 0;
    }
    return hazy / (double) DRAWS;
  }
}
