package rondure.blur;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.AverageStar;
import rondure.stars.StarField;
import rondure.stars.Surroundings;

/**
 * A wide, round, faint glow about every star, as dew on the lens, mist or a soft filter make it:
 * much wider than the core, falling off more slowly than the wings that lenses have by themselves.
 *
 * @param share of the star's light that stands in the glow, if there is one
 * @param shareError standard error of that
 * @param px2 second moment that it adds to the star, share · σ²
 * @param px2Error standard error of that
 * @param logEvidence natural logarithm of the likelihood with a glow over that without
 */
public record Halo(
    double share, double shareError, double px2, double px2Error, double logEvidence) {
  private static final int LEAST_STARS = 12;

  private static final double LEAST_SHARE = 1e-3;

  /**
   * A glow as wide as this is as likely the lens's as dew's: 40 µm on pixels of 4 µm (common
   * practice); an 85 mm lens, wide open on a night not known to be dewy, showed 8 to 10 px.
   */
  private static final double LENS_GLOW_PX = 10.3;

  private static final double LENS_GLOW_SPREAD_PX = 0.6;

  /** Where dew takes as much again, this share in its halo leaves 65 % of the light: 1 − √0.65. */
  private static final double HAZY_SHARE = 0.194;

  /** Stars drawn out further hide it behind their ends. */
  private static final double LEAST_ROUNDNESS = 0.7;

  /**
   * χ² over freedom beyond which no core and halo describe the star, as a wide disc: cores that fit
   * leave 0.2 to 0.9, their rings' errors being generous.
   */
  private static final double MOST_MISFIT = 1.3;

  /** Rings needed beyond the models' free numbers. */
  private static final int LEAST_RINGS = 7;

  public Halo {
    if (!(share >= 0 && share < 1 && shareError >= 0 && px2 >= 0 && px2Error >= 0)
        || Double.isNaN(logEvidence)) {
      throw new IllegalArgumentException(
          "share must be in [0, 1), errors and px2 >= 0, were "
              + share
              + ", "
              + shareError
              + ", "
              + px2
              + ", "
              + px2Error
              + ", "
              + logEvidence);
    }
  }

  /** Of each of a scene's frames; empty where it cannot be told. */
  static List<Optional<Halo>> of(SceneEvidence scene, List<CameraPath> paths) {
    return IntStream.range(0, paths.size())
        .parallel()
        .mapToObj(i -> of(scene.frames().get(i), paths.get(i)))
        .toList();
  }

  /**
   * Light that a moving camera drew out is no halo, and where the sky is black none can be seen.
   */
  static Optional<Halo> of(FrameEvidence frame, CameraPath path) {
    boolean drawn = path.twice().isPresent() || path.tail().isPresent();
    return drawn || BlackSky.is(frame)
        ? Optional.empty()
        : of(frame.field(), FieldShape.of(frame.field()));
  }

  /** Medians of several readings; empty of none. */
  static Optional<Halo> typical(List<Halo> halos) {
    return halos.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Halo(
                median(halos, Halo::share),
                median(halos, Halo::shareError),
                median(halos, Halo::px2),
                median(halos, Halo::px2Error),
                median(halos, Halo::logEvidence)));
  }

  private static double median(List<Halo> halos, ToDoubleFunction<Halo> value) {
    return RobustStats.median(halos.stream().mapToDouble(value).toArray());
  }

  /** The glow of a frame's average star; empty where that does not reach out far enough. */
  static Optional<Halo> of(StarField field, FieldShape shape) {
    if (shape.roundness() < LEAST_ROUNDNESS) {
      return Optional.empty();
    }
    return field.averageStars().stream()
        .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
        .filter(average -> average.starCount() >= LEAST_STARS)
        .findFirst()
        .flatMap(average -> of(average, HaloGround.of(field, shape), field.surroundings(), shape));
  }

  /** What rings beyond the average star show counts where core and halo explain them too. */
  static Optional<Halo> of(
      AverageStar average, HaloGround ground, Surroundings surroundings, FieldShape shape) {
    HaloRings rings = HaloRings.of(average, shape);
    if (rings.size() < LEAST_RINGS) {
      return Optional.empty();
    }
    double elongation = Math.max(1, 1 / shape.roundness());
    double unit = shape.minorFwhmPx();
    HaloAround around = HaloAround.of(surroundings, unit, rings.reach());
    HaloAround none = HaloAround.of(Surroundings.NONE, unit, rings.reach());
    return Stream.of(around, none)
        .map(far -> new HaloFit(rings, ground, far, elongation))
        .filter(fit -> fit.misfit() <= MOST_MISFIT)
        .findFirst()
        .map(fit -> inPixels(fit.found(), unit * unit));
  }

  private static Halo inPixels(HaloFit.Found found, double px2) {
    return new Halo(
        found.share(),
        found.shareError(),
        found.square() * px2,
        found.squareError() * px2,
        found.logEvidence());
  }

  /** Half-maximum width of a Gaussian of this share and moment, px. */
  double fwhmPx() {
    return Moments.FWHM_PER_SIGMA * Math.sqrt(px2 / Math.max(LEAST_SHARE, share));
  }

  /**
   * Probability that there is one and that the lens itself did not make it: fast lenses draw a glow
   * of some tens of µm by spherical aberration, dew scatters farther.
   *
   * @param before how usual halos are, 0 to 1
   */
  double dewProbability(double before) {
    return probability(before) * Excess.logistic((fwhmPx() - LENS_GLOW_PX) / LENS_GLOW_SPREAD_PX);
  }

  /**
   * How much less likely the frame is to look as it does behind dew that makes it hazy than
   * without: at most 1, since what is seen of a halo counts by its light; less for a glow that is
   * seen and the lens's own, and for one that holds too little light.
   */
  double dewLikelihood() {
    double lens = 1 - Excess.logistic((fwhmPx() - LENS_GLOW_PX) / LENS_GLOW_SPREAD_PX);
    double enough = Excess.normalShare((share - HAZY_SHARE) / Math.max(LEAST_SHARE, shareError));
    double likely = logEvidence + Math.log(enough / (1 - HAZY_SHARE / HaloFit.MOST_SHARE));
    return Math.exp(Math.min(0, likely)) * (1 - lens * probability(LightMissing.USUAL));
  }

  /** The share, so many standard errors off; at least 0. */
  double share(double sigmas) {
    return Math.max(0, share + sigmas * shareError);
  }

  /**
   * Probability that there is one.
   *
   * @param before how usual halos are, 0 to 1
   */
  double probability(double before) {
    return Excess.logistic(logEvidence + Math.log(before / (1 - before)));
  }
}
