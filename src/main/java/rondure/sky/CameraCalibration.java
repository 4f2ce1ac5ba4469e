package rondure.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds focal length, distortion and projection from the way stars move over a camera.
 *
 * <p>Stars keep their angles to each other wherever the turning sky takes them over the field; only
 * the right camera turns their places into such angles. That needs no clock and holds on a creeping
 * tripod, but is weak with long lenses and short motions. With a clock the sky's known rate, told
 * by the attitudes, fixes the focal length on top, unless both contradict each other. The nominal
 * focal length and a small distortion count as measurements too, so nothing moves by more than the
 * stars demand.
 */
public final class CameraCalibration {
  private static final int LEAST_TRACKS = 8;
  private static final int MOST_FRAMES = 32;
  private static final int MOST_TRACKS = 200;

  /** So many are enough to choose between projections. */
  private static final int FEW_FRAMES = 12;

  private static final int FEW_TRACKS = 100;

  /** Of the focal length, as a share: worse is not better than the facts. */
  private static final double LARGEST_FOCAL_ERROR = 0.01;

  private static final double LARGEST_RESIDUAL_PX = 2;
  private static final double LEAST_INLIER_SHARE = 0.5;

  /** A calibrated camera sees its whole frame and so much around it. */
  private static final double RIM_PX = 2;

  /** Below this ρ in the corner (17° off axis) all projections are one with some k1. */
  private static final double NARROW = 0.3;

  /** Another projection must explain the places better by this much and this share. */
  private static final double CLEAR_MARGIN = 10;

  private static final double CLEAR_SHARE = 0.1;

  /** Rate and field contradict each other beyond 2 standard errors: the tripod creeps. */
  private static final double MOST_RATE_CHI2 = 4;

  private CameraCalibration() {}

  /**
   * A pure function of the sightings.
   *
   * @param nominal camera from the facts; its centre is kept, its focal length taken as good to a
   *     few percent, its k1 as a guess
   * @param sightings of stars of one scene, each track one star; wrong ones may be among them
   * @param clock mid-exposure times; {@link SceneClock#NONE} when unknown or not to be trusted
   */
  public static CameraFinding of(Camera nominal, List<Sighting> sightings, SceneClock clock) {
    return of(CameraPrior.ofFacts(nominal), sightings, clock);
  }

  /** The same with what is known of the camera before. */
  static CameraFinding of(CameraPrior prior, List<Sighting> sightings, SceneClock clock) {
    SightingChoice choice = new SightingChoice(sightings, prior.nominal());
    if (isTooSmall(choice.of(FEW_FRAMES, FEW_TRACKS))) {
      return CameraFinding.nominal(prior.nominal(), CameraFinding.Outcome.TOO_FEW, List.of());
    }
    return judged(choice, prior, clock);
  }

  private static boolean isTooSmall(SightingTable table) {
    return table.frames() < 2 || table.tracks() < LEAST_TRACKS;
  }

  private static CameraFinding judged(SightingChoice choice, CameraPrior prior, SceneClock clock) {
    List<BundleFit> fits = projections(choice.of(FEW_FRAMES, FEW_TRACKS), prior, clock);
    double scale = best(fits).scale();
    List<CameraFinding.Score> scores =
        fits.stream()
            .map(fit -> score(fit, scale))
            .sorted(Comparator.comparingDouble(CameraFinding.Score::criterion))
            .toList();
    double lead = fits.get(0).criterion(scale) - scores.get(0).criterion();
    boolean clear = lead > CLEAR_MARGIN && lead > CLEAR_SHARE * scores.get(0).criterion();
    Projection projection = clear ? scores.get(0).projection() : prior.nominal().projection();
    BundleFit chosen = fit(choice.of(MOST_FRAMES, MOST_TRACKS), prior.through(projection), clock);
    return finding(prior.nominal(), chosen, scores);
  }

  private static CameraFinding finding(
      Camera nominal, BundleFit chosen, List<CameraFinding.Score> scores) {
    CameraFinding.Outcome outcome = outcome(chosen);
    if (outcome != CameraFinding.Outcome.CALIBRATED) {
      return CameraFinding.nominal(nominal, outcome, scores);
    }
    return new CameraFinding(
        chosen.camera(),
        outcome,
        chosen.focalError(),
        chosen.k1Error(),
        chosen.correlation(),
        chosen.residualPx(),
        chosen.rate().map(RateLine::rateShare).orElse(Double.NaN),
        scores);
  }

  /** The nominal projection's fit first, then the others' where the field is wide enough. */
  private static List<BundleFit> projections(
      SightingTable table, CameraPrior prior, SceneClock clock) {
    Camera nominal = prior.nominal();
    double corner = Math.hypot(nominal.centreXPx(), nominal.centreYPx()) / nominal.focalLengthPx();
    List<BundleFit> fits = new ArrayList<>();
    fits.add(free(table, prior, clock));
    for (Projection projection : Projection.values()) {
      if (projection != nominal.projection() && corner > NARROW) {
        fits.add(free(table, prior.through(projection), clock));
      }
    }
    return fits;
  }

  /** The least of Tukey's loss at the scale of the sharpest of the fits. */
  private static BundleFit best(List<BundleFit> fits) {
    double scale = fits.stream().mapToDouble(BundleFit::scale).min().orElse(1);
    return fits.stream().min(Comparator.comparingDouble(f -> f.criterion(scale))).orElseThrow();
  }

  private static BundleFit free(SightingTable table, CameraPrior prior, SceneClock clock) {
    double[] seconds = new double[table.frames()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = clock.secondsOf(table.frameNumbers[i]).orElse(Double.NaN);
    }
    return BundleFit.of(table, prior, seconds, clock.stepSeconds());
  }

  private static BundleFit fit(SightingTable table, CameraPrior prior, SceneClock clock) {
    BundleFit free = free(table, prior, clock);
    return free.atSiderealRate().filter(timed -> agrees(free, timed)).orElse(free);
  }

  /** Whether taking the sidereal rate on costs no more than chance does. */
  private static boolean agrees(BundleFit free, BundleFit timed) {
    double scale = free.scale();
    double rate =
        timed.rate().map(r -> Math.pow(Math.log(r.rateShare()) / r.errorShare, 2)).orElse(0.0);
    return rate + timed.criterion(scale) - free.criterion(scale) < MOST_RATE_CHI2;
  }

  private static CameraFinding.Score score(BundleFit fit, double scale) {
    Camera camera = fit.camera();
    return new CameraFinding.Score(
        camera.projection(), camera.focalLengthPx(), camera.k1(), fit.criterion(scale));
  }

  private static CameraFinding.Outcome outcome(BundleFit fit) {
    boolean fits = fit.residualPx() < LARGEST_RESIDUAL_PX && fit.inlierShare() > LEAST_INLIER_SHARE;
    if (!fits || !fit.camera().sees(-RIM_PX, -RIM_PX)) {
      return CameraFinding.Outcome.NO_FIT;
    }
    return fit.focalError() < LARGEST_FOCAL_ERROR
        ? CameraFinding.Outcome.CALIBRATED
        : CameraFinding.Outcome.TOO_UNCERTAIN;
  }
}
