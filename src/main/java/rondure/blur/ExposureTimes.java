package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rondure.base.RobustStats;

/**
 * Decides from a scene whether its shutter was open for the nominal time or the nearest 2^(n/3).
 *
 * <p>A wrong exposure leaves a uniform spin-2 along the trail in every frame, in proportion to the
 * trail's tensor; shake differs from frame to frame, so the median tells. Where it does not, the
 * budget uses the mean of both, weighted by their probabilities.
 */
final class ExposureTimes {
  /** Differences below this share of the time do not matter. */
  private static final double MATTERS = 0.002;

  /** What lens models leave of uniform spin-2, px². */
  private static final double MODEL_ERROR_PX2 = 0.02;

  private static final double MOST_LOG_ODDS = 8;

  private ExposureTimes() {}

  /** The nearest 2^(n/3) s. */
  static double steppedSeconds(double nominalSeconds) {
    double thirds = 3 * Math.log(nominalSeconds) / Math.log(2);
    return Math.pow(2, Math.rint(thirds) / 3);
  }

  /**
   * One reading for each nominal exposure.
   *
   * @param nominalSeconds of each frame
   * @param solution of these frames with the nominal exposures
   */
  static List<ExposureReading> read(List<Double> nominalSeconds, SceneSolution solution) {
    Map<Double, List<Integer>> groups = new TreeMap<>();
    for (int j = 0; j < nominalSeconds.size(); j++) {
      groups.computeIfAbsent(nominalSeconds.get(j), s -> new ArrayList<>()).add(j);
    }
    List<ExposureReading> readings = new ArrayList<>();
    groups.forEach((nominal, frames) -> readings.add(reading(nominal, frames, solution)));
    return readings;
  }

  private static ExposureReading reading(
      double nominal, List<Integer> frames, SceneSolution solution) {
    double ratio = steppedSeconds(nominal) / nominal;
    if (Math.abs(ratio - 1) < MATTERS) {
      return new ExposureReading(nominal, nominal, 0.5);
    }
    double[] surplus = new double[frames.size()];
    double trail = 0;
    for (int k = 0; k < surplus.length; k++) {
      FrameStars stars = solution.models().get(frames.get(k)).stars();
      trail = Math.max(trail, stars.places.centreTrail[0]);
      surplus[k] = alongTrail(stars, solution.own(frames.get(k)));
    }
    double scatter = 1.25 * RobustStats.madSigma(surplus) / Math.sqrt(surplus.length);
    double error = Math.hypot(MODEL_ERROR_PX2, scatter);
    double seen = RobustStats.median(surplus);
    double expected = trail * (ratio * ratio - 1);
    double logOdds = expected * (2 * seen - expected) / (2 * error * error);
    double stepped = Excess.logistic(Math.max(-MOST_LOG_ODDS, Math.min(MOST_LOG_ODDS, logOdds)));
    double square = 1 + stepped * (ratio * ratio - 1);
    return new ExposureReading(nominal, nominal * Math.sqrt(square), stepped);
  }

  /** Uniform spin-2 along the trail in the image centre, px². */
  private static double alongTrail(FrameStars stars, double[] own) {
    double length = Math.hypot(stars.places.centreTrail[1], stars.places.centreTrail[2]);
    if (!(length > 0)) {
      return 0;
    }
    return (own[FrameModel.ALONG] * stars.places.centreTrail[1]
            + own[FrameModel.DIAGONAL] * stars.places.centreTrail[2])
        / length;
  }
}
