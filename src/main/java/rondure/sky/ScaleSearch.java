package rondure.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;

/**
 * A focal length for a scene whose facts tell none. Stars are matched under several guesses; the
 * way a wide field bends when it turns, and with a clock the sidereal rate, then tell the scale.
 */
final class ScaleSearch {
  /** Guesses over the frame's diagonal: from ultra-wide to long lenses. */
  private static final double[] GUESSES = {0.55, 0.9, 1.6, 4};

  private static final int FRAMES_TO_TRY = 6;
  private static final int LINKS_TO_FIT = 10;
  private static final double SHORTEST = 0.3;
  private static final double STEP = 1.07;
  private static final int STEPS = 62;
  private static final double LARGEST_ERROR = 0.08;

  /** ln of the rate: beyond it the camera moved, or the focal length is wrong. */
  private static final double MOST_RATE_OFF = 0.2;

  /** Misfits count as at least this, px: no camera model is better before it is calibrated. */
  private static final double MODEL_ERROR_PX = 0.15;

  private final List<SkyShot> shots;
  private final SceneClock clock;
  private final int widthPx;
  private final int heightPx;

  /**
   * @param camera with the focal length found, or one that matches the frames
   * @param known whether the scene proves the focal length, to 8 %: by shapes and, with a clock, by
   *     the sidereal rate
   */
  record Found(Camera camera, boolean known) {}

  ScaleSearch(List<SkyShot> shots, SceneClock clock) {
    this.shots = shots;
    this.clock = clock;
    this.widthPx = shots.get(0).field().widthPx();
    this.heightPx = shots.get(0).field().heightPx();
  }

  Found find() {
    Camera best = camera(GUESSES[1]);
    int most = -1;
    for (double guess : GUESSES) {
      Camera camera = camera(guess);
      List<SkyShot> some = shots.subList(0, Math.min(FRAMES_TO_TRY, shots.size()));
      int pairs = links(camera, some).stream().mapToInt(link -> link.pairs().size()).sum();
      if (pairs > most) {
        most = pairs;
        best = camera;
      }
    }
    List<FrameStars> frames = frames(best, shots);
    return refine(best, frames, StarChain.of(best, frames, clock));
  }

  private Camera camera(double overDiagonal) {
    return Camera.rectilinear(overDiagonal * Math.hypot(widthPx, heightPx), widthPx, heightPx);
  }

  private static List<FrameStars> frames(Camera camera, List<SkyShot> shots) {
    return shots.stream().map(shot -> new FrameStars(shot.field(), camera)).toList();
  }

  private List<FrameLink> links(Camera camera, List<SkyShot> some) {
    return StarChain.of(camera, frames(camera, some), clock);
  }

  private Found refine(Camera start, List<FrameStars> frames, List<FrameLink> links) {
    List<StarPaths.Pair> pairs = StarPaths.longest(frames, links, LINKS_TO_FIT);
    double[] costs = new double[STEPS];
    List<Camera> cameras = new ArrayList<>();
    int best = 0;
    for (int i = 0; i < STEPS; i++) {
      cameras.add(camera(SHORTEST * Math.pow(STEP, i)));
      costs[i] = cost(cameras.get(i), pairs);
      best = costs[i] < costs[best] ? i : best;
    }
    Optional<Camera> byShape =
        minimum(costs, best).map(place -> camera(SHORTEST * Math.pow(STEP, place)));
    if (byShape.isPresent()) {
      return new Found(byShape.get(), isSidereal(byShape.get(), timed(pairs)));
    }
    return byRate(cameras, costs, best, timed(pairs)).orElse(new Found(start, false));
  }

  private List<StarPaths.Pair> timed(List<StarPaths.Pair> pairs) {
    return pairs.stream()
        .filter(p -> p.seconds(clock).filter(s -> s > 4 * clock.stepSeconds()).isPresent())
        .sorted(Comparator.comparingInt(StarPaths.Pair::parent))
        .toList();
  }

  /**
   * Whether a focal length from shapes alone may be believed: distortion bends paths as a shorter
   * lens does, so that the clock, where there is one, must not contradict it.
   */
  private boolean isSidereal(Camera camera, List<StarPaths.Pair> timed) {
    return timed.isEmpty() || Math.abs(Math.log(rateShare(camera, timed))) < MOST_RATE_OFF;
  }

  /** Chi² of the misfits to one rotation for each pair of frames. */
  private static double cost(Camera camera, List<StarPaths.Pair> pairs) {
    double cost = 0;
    for (StarPaths.Pair pair : pairs) {
      Optional<TurnFit> fit = pair.fit(camera);
      if (fit.isEmpty()) {
        return Double.POSITIVE_INFINITY;
      }
      double misfit = fit.get().misfitPx();
      cost += 2 * pair.count() * misfit * misfit / (MODEL_ERROR_PX * MODEL_ERROR_PX);
    }
    return cost;
  }

  /** Place of the minimum, when a parabola through it is narrow enough. */
  private static Optional<Double> minimum(double[] costs, int best) {
    if (best == 0 || best == costs.length - 1 || !Double.isFinite(costs[best])) {
      return Optional.empty();
    }
    double left = costs[best - 1] - costs[best];
    double right = costs[best + 1] - costs[best];
    double bend = left + right;
    // χ² grows by 1 at one standard error, here in steps of the grid.
    double errorSteps = Math.sqrt(2 / Math.max(1e-12, bend));
    if (!Double.isFinite(bend) || errorSteps * Math.log(STEP) > LARGEST_ERROR) {
      return Optional.empty();
    }
    return Optional.of(best + (left - right) / (2 * bend));
  }

  /** The focal length at which the stars turn at the sidereal rate, where shapes do not object. */
  private Optional<Found> byRate(
      List<Camera> cameras, double[] costs, int best, List<StarPaths.Pair> timed) {
    if (timed.isEmpty() || !isEven(cameras.get(best), timed)) {
      return Optional.empty();
    }
    for (int i = 0; i + 1 < cameras.size(); i++) {
      double shorter = Math.log(rateShare(cameras.get(i), timed));
      double longer = Math.log(rateShare(cameras.get(i + 1), timed));
      boolean steep = shorter - longer > 0.25 * Math.log(STEP);
      boolean allowed = costs[i] < costs[best] + 12;
      if (shorter >= 0 && longer < 0 && steep && allowed) {
        double place = i + shorter / (shorter - longer);
        return Optional.of(new Found(camera(SHORTEST * Math.pow(STEP, place)), true));
      }
    }
    return Optional.empty();
  }

  /** Whether the pairs turn at one rate, so that its median means something. */
  private boolean isEven(Camera camera, List<StarPaths.Pair> timed) {
    double[] rates = rates(camera, timed);
    double error = RobustStats.madSigma(rates) / Math.sqrt(rates.length);
    return error < LARGEST_ERROR / 2 * RobustStats.median(rates);
  }

  /** Median rate of the pairs over the sidereal one. */
  private double rateShare(Camera camera, List<StarPaths.Pair> timed) {
    return RobustStats.median(rates(camera, timed)) / SkyMotion.SIDEREAL_RATE_RAD_PER_S;
  }

  private double[] rates(Camera camera, List<StarPaths.Pair> timed) {
    return timed.stream()
        .mapToDouble(
            p ->
                p.fit(camera)
                    .map(f -> f.turn().angleRad() / p.seconds(clock).orElseThrow())
                    .orElse(Double.NaN))
        .toArray();
  }
}
