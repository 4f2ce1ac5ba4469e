package rondure.sky;

import java.util.Arrays;
import java.util.stream.IntStream;
import rondure.base.RobustStats;

/**
 * Stretches in which frames turn on evenly. A knock ends one, and of a head that sags for a while
 * every frame does: a line through all would take either for a faster or a slower sky.
 */
final class TurnStretches {
  /** χ² of three components beyond which a step is none of the usual ones: 6 σ. */
  private static final double MOST_CHI2 = 36;

  private static final int LEAST_FRAMES = 4;

  /** Where fewer of the frames lie in long stretches, the camera never came to rest. */
  private static final double LEAST_SHARE = 0.6;

  private static final double LEAST_STEP_RAD = 1e-6;

  private TurnStretches() {}

  /**
   * @param turns three components for each frame, rad
   * @param times of the frames, s, growing; NaN for those that do not count
   * @param stepSeconds of the clock
   * @return number of each frame's stretch, from 0; all 0 where no step stands out
   */
  static int[] of(double[][] turns, double[] times, double stepSeconds) {
    int[] known = IntStream.range(0, times.length).filter(i -> !Double.isNaN(times[i])).toArray();
    int[] stretches = new int[times.length];
    if (known.length < 2 * LEAST_FRAMES) {
      return stretches;
    }
    boolean[] breaks = breaks(turns, times, known, stepSeconds);
    int number = 0;
    for (int k = 1; k < known.length; k++) {
      number += breaks[k] ? 1 : 0;
      stretches[known[k]] = number;
    }
    long resting =
        Arrays.stream(known)
            .filter(i -> count(known, stretches, stretches[i]) >= LEAST_FRAMES)
            .count();
    return resting < LEAST_SHARE * known.length ? new int[times.length] : stretches;
  }

  private static long count(int[] known, int[] stretches, int number) {
    return Arrays.stream(known).filter(i -> stretches[i] == number).count();
  }

  /** Whether the step to each of the known frames is another than the usual ones. */
  private static boolean[] breaks(
      double[][] turns, double[] times, int[] known, double stepSeconds) {
    double[] chi2 = new double[known.length];
    for (int axis = 0; axis < 3; axis++) {
      double[] steps = new double[known.length - 1];
      double[] gaps = new double[known.length - 1];
      for (int k = 1; k < known.length; k++) {
        gaps[k - 1] = times[known[k]] - times[known[k - 1]];
        steps[k - 1] = turns[known[k]][axis] - turns[known[k - 1]][axis];
      }
      double usual = usualRate(steps, gaps);
      double[] off = new double[steps.length];
      Arrays.setAll(off, k -> steps[k] - usual * gaps[k]);
      double clock = Math.abs(usual) * stepSeconds / Math.sqrt(6);
      double sigma = Math.max(LEAST_STEP_RAD, Math.max(clock, RobustStats.madSigma(off)));
      for (int k = 1; k < known.length; k++) {
        chi2[k] += off[k - 1] * off[k - 1] / (sigma * sigma);
      }
    }
    boolean[] breaks = new boolean[known.length];
    for (int k = 1; k < known.length; k++) {
      breaks[k] = chi2[k] > MOST_CHI2;
    }
    return breaks;
  }

  /** Median of the rates, 1/s; frames of one time tell none. */
  private static double usualRate(double[] steps, double[] gaps) {
    double[] rates = new double[steps.length];
    Arrays.setAll(rates, k -> gaps[k] > 0 ? steps[k] / gaps[k] : Double.NaN);
    return RobustStats.median(rates);
  }
}
