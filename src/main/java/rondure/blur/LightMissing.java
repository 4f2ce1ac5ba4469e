package rondure.blur;

import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Light that a star's image misses: what it lost beside the scene's clear frames, what stands in a
 * halo, what dew that makes a halo takes besides, and what a steady fall took before the first
 * frame shown. The last two cannot be seen. What dew takes besides is taken to be as much again,
 * give or take e^±0.5. Of the fall the frames show a part that is nothing special in its course: it
 * took more than r times as much before with probability 1 / (1 + r) (Gott 1993, Nature 363, 315;
 * from memory), as far as so much may be lost. What no frame shows shall leave a verdict open and
 * not make it: in half of the cases nothing went before, in the others the larger half of that law.
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
  static final double USUAL = 0.1;

  private static final double WHERE_LIGHT_IS_LOST = 0.7;

  /** From here a halo is said to be there and its second moment is booked. */
  static final double SAID_FROM = 0.5;

  private static final double LOST_MAG = 0.1;
  private static final double SURE_SIGMAS = 3;
  private static final double BESIDES_SPREAD = 0.5;
  private static final int NORMALS = 4;

  /** Three quarters of the light: hardly a star is left to be followed through more. */
  private static final double MOST_MAG = 1.5;

  private static final double[] CHANCE = chance();

  /** Standard normal numbers for each draw, always the same. */
  private static double[] chance() {
    SplittableRandom random = new SplittableRandom(20_251_125);
    double[] chance = new double[DRAWS * NORMALS];
    for (int i = 0; i < chance.length; i++) {
      chance[i] = random.nextGaussian();
    }
    return chance;
  }

  static LightMissing of(FrameLight light) {
    return new LightMissing(light.loss(), light.halo(), light.clearHalo());
  }

  /** As a frame alone tells. */
  static LightMissing ofHalo(Optional<Halo> halo) {
    return new LightMissing(Optional.empty(), halo, halo);
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
   * Share of the light that is missing, in one of the cases that may be.
   *
   * @param draw from 0
   * @param normal how far off the loss is, in its errors
   */
  double drawn(int draw, double normal) {
    double before = Excess.normalShare(CHANCE[draw * NORMALS + 3]);
    double luck = draw % 2 == 0 ? before / 2 : 1;
    double lost = loss.map(l -> lostShare(l, normal, luck)).orElse(0.0);
    double off = CHANCE[draw * NORMALS];
    double haloLuck = Excess.normalShare(CHANCE[draw * NORMALS + 1]);
    double besides = Math.exp(BESIDES_SPREAD * CHANCE[draw * NORMALS + 2]);
    Optional<Halo> base = loss.isPresent() ? clear : own;
    double baseShare =
        base.filter(halo -> haloLuck < halo.dewProbability(USUAL))
            .map(h -> h.share(off))
            .orElse(0.0);
    double kept = (1 - lost) * (1 - baseShare) * (1 - Math.min(0.9, besides * baseShare));
    return 1 - kept;
  }

  private static double lostShare(FrameLight.Loss loss, double normal, double luck) {
    double error = Math.hypot(loss.errorMag(), Haze.LEAST_ERROR_MAG);
    double mag = loss.lossMag() + normal * error + beforeMag(loss.fallMag(), luck);
    return 1 - Math.pow(10, -0.4 * mag);
  }

  /**
   * What a steady fall took before the first frame.
   *
   * @param fallMag that the frames show
   * @param luck from 0, for as much as may be, to 1, for nothing
   */
  static double beforeMag(double fallMag, double luck) {
    double least = Math.min(1, fallMag / MOST_MAG);
    return fallMag > 0 ? fallMag * (1 / (least + (1 - least) * luck) - 1) : 0;
  }

  /**
   * Probability that so much is missing that it is called haze where nothing else widens the stars.
   */
  double hazeProbability() {
    if (loss.isEmpty() && own.isEmpty()) {
      return 0;
    }
    int hazy = 0;
    for (int draw = 0; draw < DRAWS; draw++) {
      double share = drawn(draw, CHANCE[(DRAWS - 1 - draw) * NORMALS + 2]);
      hazy += share >= FrameLight.HAZE_LOSS_SHARE ? 1 : 0;
    }
    return hazy / (double) DRAWS;
  }
}
