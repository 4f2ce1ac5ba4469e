package rondure.testing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.sim.CameraPlan;
import rondure.sim.FrameTruth;
import rondure.sim.NightEvent;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.StarTruth;
import rondure.sky.SkyShot;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.stars.StarSettings;

/**
 * Star fields made from the simulator's truth and the noise that measuring would add, without any
 * pixels: for tests of what follows the measurement.
 *
 * <p>Errors are the Cramér-Rao bounds of a Gaussian star when flux, place and shape are all free
 * (background: σx = √2 σ/ν, δMxx = √8 σ²/ν, δMxy = 2 σ²/ν; photons: σ/√F, √2 σ²/√F, σ²/√F), added
 * in squares and enlarged by a fifth, as measured moments are worse than the bound by 10 to 40 %.
 * Coma shows as an ellipse fitted to it ({@link ComaShape}). Not in it: crowding, the estimator's
 * answers to other profiles that are no Gaussians.
 */
public final class TruthFields {
  private static final StarSettings SETTINGS = StarSettings.defaults();
  private static final double ABOVE_THE_BOUND = 1.2;
  private static final double SATURATED = 0.9;
  private static final double CALM_WING_RATIO = 1.06;

  /**
   * Half-maximum width over the r.m.s. width of a Gaussian ⊗ disc whose second moment is to 0, 0.1,
   * … 0.9 the disc's: ∫ exp(−(r² + t²) / 2σ²) I0(r t / σ²) t dt over the disc, with scipy
   * (Gauss-Legendre of 400 points, ive, brentq).
   */
  private static final double[] WIDTH_OVER_SIGMA = {
    2.3548, 2.3622, 2.3887, 2.4432, 2.5381, 2.6877, 2.9018, 3.1717, 3.4632, 3.7414
  };

  private TruthFields() {}

  /**
   * What would have been measured in a frame, ground lights and hot pixels left out.
   *
   * @param seed of the noise
   */
  public static StarField of(NightPlan plan, FrameTruth truth, long seed) {
    SplittableRandom chance = new SplittableRandom(seed * 1_000_003 + truth.number());
    List<Star> stars = new ArrayList<>();
    List<Detection> others = new ArrayList<>();
    double gain = electronsPerCount(plan, truth.number());
    double white = plan.camera().whiteLevelCounts() - (double) plan.camera().blackLevelCounts();
    for (StarTruth star : brightestFirst(truth.stars())) {
      double peak = peakElectrons(star) / gain / white;
      if (peak > SATURATED) {
        others.add(detection(star, gain, Refusal.SATURATED, chance));
      } else if (star.snr() < SETTINGS.shapeSnr()) {
        others.add(detection(star, gain, Refusal.TOO_FAINT, chance));
      } else {
        Light light = new Light(truth.sharesPx2().focus(), gain, peak);
        ComaShape coma = ComaShape.of(plan, truth.number(), star);
        measured(star, light, coma, chance).ifPresent(stars::add);
      }
    }
    return field(plan, truth, stars, others);
  }

  /** All frames of a plan as registration gets them; clocks and facts as its files would tell. */
  public static List<SkyShot> shots(NightPlan plan) {
    return shots(plan, plan.seed());
  }

  /** The same with the noise of another seed. */
  public static List<SkyShot> shots(NightPlan plan, long seed) {
    NightSimulator simulator = new NightSimulator(plan);
    List<SkyShot> shots = new ArrayList<>();
    for (int number = 1; number <= simulator.frameCount(); number++) {
      FrameTruth truth = simulator.truth(number);
      shots.add(shot(plan, truth, of(plan, truth, seed)));
    }
    return shots;
  }

  /** One frame as registration gets it. */
  public static SkyShot shot(NightPlan plan, FrameTruth truth, StarField field) {
    boolean told = !plan.files().withoutExif();
    double step = plan.files().withoutSubSeconds() ? 1 : 0.01;
    double fraction = plan.startTime().getNano() / 1e9;
    double start = Math.floor((truth.startSeconds() + fraction) / step) * step;
    double mid = start + truth.nominalSeconds() / 2;
    return new SkyShot(
        field,
        told ? Optional.of(mid) : Optional.empty(),
        step,
        told ? Optional.of(truth.nominalSeconds()) : Optional.empty(),
        told ? Optional.of(plan.pixelsPerRadian()) : Optional.empty(),
        told ? held(plan, truth.number()) : Orientation.NORMAL);
  }

  private static Orientation held(NightPlan plan, int number) {
    Orientation held = plan.aim().held();
    for (NightEvent event : plan.events()) {
      if (event instanceof NightEvent.ReAim reAim && reAim.frame() <= number) {
        held = reAim.aim().held();
      }
    }
    return held;
  }

  private static List<StarTruth> brightestFirst(List<StarTruth> stars) {
    return stars.stream()
        .sorted(Comparator.comparingDouble(StarTruth::electrons).reversed())
        .toList();
  }

  private static double electronsPerCount(NightPlan plan, int number) {
    CameraPlan camera = plan.camera();
    double iso = Groups.of(plan, number).iso();
    return camera.electronsPerCount() * camera.baseIso() / iso;
  }

  /** Light in the middle of a Gaussian with the star's moments, electrons. */
  private static double peakElectrons(StarTruth star) {
    return star.electrons() / (2 * Math.PI * Math.sqrt(determinant(star)));
  }

  private static double determinant(StarTruth star) {
    return Math.max(1e-6, star.xxPx2() * star.yyPx2() - star.xyPx2() * star.xyPx2());
  }

  /** What a star's light is shaped and counted by. */
  private record Light(double focusPx2, double gain, double peak) {}

  private static Optional<Star> measured(
      StarTruth star, Light light, ComaShape coma, RandomGenerator chance) {
    double mean = Math.sqrt(determinant(star));
    double xxError = star.xxPx2() * relativeError(star);
    double yyError = star.yyPx2() * relativeError(star);
    double xyError = mean * relativeError(star) / Math.sqrt(2);
    Moments whole = new Moments(star.xxPx2(), star.xyPx2(), star.yyPx2());
    Moments even = whole.minus(coma.moments());
    Moments seen = even.plus(coma.seenBeside(even));
    Moments shape =
        new Moments(
            seen.xxPx2() + xxError * chance.nextGaussian(),
            seen.xyPx2() + xyError * chance.nextGaussian(),
            seen.yyPx2() + yyError * chance.nextGaussian());
    if (!shape.isPositive()) {
      return Optional.empty();
    }
    double width = widthOverSigma(2 * light.focusPx2() / (star.xxPx2() + star.yyPx2()));
    double skewError = Math.sqrt(mean) * relativeError(star);
    double skew = coma.skewPx(whole);
    return Optional.of(
        new Star(
            star.xPx() + placeError(star, star.xxPx2()) * chance.nextGaussian(),
            star.yPx() + placeError(star, star.yyPx2()) * chance.nextGaussian(),
            star.electrons() / light.gain() * (1 + chance.nextGaussian() / star.snr()),
            star.snr(),
            shape,
            xxError,
            xyError,
            yyError,
            width * Math.sqrt(shape.majorPx2()),
            width * Math.sqrt(shape.minorPx2()),
            skew * Math.cos(coma.angleRad()) + skewError * chance.nextGaussian(),
            skew * Math.sin(coma.angleRad()) + skewError * chance.nextGaussian(),
            CALM_WING_RATIO + chance.nextGaussian() / star.snr(),
            light.peak()));
  }

  private static double widthOverSigma(double discShare) {
    double at = Math.min(WIDTH_OVER_SIGMA.length - 1.001, 10 * Math.max(0, discShare));
    int below = (int) at;
    return WIDTH_OVER_SIGMA[below]
        + (at - below) * (WIDTH_OVER_SIGMA[below + 1] - WIDTH_OVER_SIGMA[below]);
  }

  /** Error of Mxx over Mxx. */
  private static double relativeError(StarTruth star) {
    return ABOVE_THE_BOUND * Math.hypot(Math.sqrt(8) / star.snr(), Math.sqrt(2 / star.electrons()));
  }

  private static double placeError(StarTruth star, double variancePx2) {
    return ABOVE_THE_BOUND
        * Math.sqrt(variancePx2 * (2 / (star.snr() * star.snr()) + 1 / star.electrons()));
  }

  private static Detection detection(
      StarTruth star, double gain, Refusal reason, RandomGenerator chance) {
    return new Detection(
        star.xPx() + placeError(star, star.xxPx2()) * chance.nextGaussian(),
        star.yPx() + placeError(star, star.yyPx2()) * chance.nextGaussian(),
        star.electrons() / gain,
        reason);
  }

  private static StarField field(
      NightPlan plan, FrameTruth truth, List<Star> stars, List<Detection> others) {
    List<Star> shaped = stars.subList(0, Math.min(stars.size(), SETTINGS.shapeStarsMax()));
    List<Detection> listed = others.subList(0, Math.min(others.size(), SETTINGS.otherStarsMax()));
    Map<Refusal, Integer> refused = new EnumMap<>(Refusal.class);
    others.forEach(other -> refused.merge(other.reason(), 1, Integer::sum));
    return Fields.field(
        plan.camera().widthPx(),
        plan.camera().heightPx(),
        shaped,
        listed,
        refused,
        sky(plan, truth));
  }

  /** The noise is told by the stars' signal-to-noise; the level is what makes that noise. */
  private static SkyState sky(NightPlan plan, FrameTruth truth) {
    CameraPlan camera = plan.camera();
    double[] noises =
        truth.stars().stream()
            .mapToDouble(
                s ->
                    s.electrons()
                        / (Math.sqrt(4 * Math.PI * (s.xxPx2() + s.yyPx2()) / 2) * s.snr()))
            .sorted()
            .toArray();
    double noise = noises.length == 0 ? camera.readNoiseElectrons() : noises[noises.length / 2];
    double gain = electronsPerCount(plan, truth.number());
    double level = Math.max(0, noise * noise - Math.pow(camera.readNoiseElectrons(), 2)) / gain;
    double white = camera.whiteLevelCounts() - (double) camera.blackLevelCounts();
    return new SkyState(level, Math.max(1e-3, noise / gain), level / white, 1, 0);
  }
}
