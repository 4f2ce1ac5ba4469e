package rondure.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import rondure.base.RobustStats;

/**
 * Rotation vectors of frames over their times, and straight lines of one slope through them: one
 * for each stretch between knocks of the camera.
 */
final class TurnLines {
  private final double[][] turns;
  private final double[] times;
  private final int[] stretches;

  /**
   * Shares the arrays.
   *
   * @param turns three components for each frame, rad
   * @param times of the frames, s; NaN for those that do not count
   * @param stretches number of the stretch that each is of, from 0
   */
  TurnLines(double[][] turns, double[] times, int[] stretches) {
    this.turns = turns;
    this.times = times;
    this.stretches = stretches;
  }

  /** Median of the slopes of pairs some time apart, component by component (Theil and Sen). */
  double[] medianSlope(double leastSeconds) {
    List<double[]> pairs = new ArrayList<>();
    for (int i = 0; i < times.length; i++) {
      for (int j = 0; j < times.length; j++) {
        double gap = times[j] - times[i];
        if (gap >= leastSeconds) {
          double[] slope = new double[3];
          for (int axis = 0; axis < 3; axis++) {
            slope[axis] = (turns[j][axis] - turns[i][axis]) / gap;
          }
          pairs.add(slope);
        }
      }
    }
    double[] median = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      int component = axis;
      median[axis] = RobustStats.median(pairs.stream().mapToDouble(p -> p[component]).toArray());
    }
    return median;
  }

  /** What each frame's value adds to the weighted lines' slope. */
  double[] perFrame(double[] weights) {
    double[] sums = new double[times.length];
    double[] means = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      if (weights[i] > 0) {
        sums[stretches[i]] += weights[i];
        means[stretches[i]] += weights[i] * times[i];
      }
    }
    double power = 0;
    double[] slopes = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      if (weights[i] > 0) {
        double off = times[i] - means[stretches[i]] / sums[stretches[i]];
        slopes[i] = weights[i] * off;
        power += slopes[i] * off;
      }
    }
    double whole = Math.max(1e-12, power);
    return Arrays.stream(slopes).map(s -> s / whole).toArray();
  }

  /** Slope of the weighted line. */
  double[] slope(double[] perFrame) {
    double[] slope = new double[3];
    for (int i = 0; i < perFrame.length; i++) {
      for (int axis = 0; axis < 3; axis++) {
        slope[axis] += perFrame[i] * turns[i][axis];
      }
    }
    return slope;
  }

  /** How far ahead of its line a frame has turned about its axis, s; NaN without a time. */
  double[] misfitSeconds(double[] slope) {
    double square = slope[0] * slope[0] + slope[1] * slope[1] + slope[2] * slope[2];
    double[] ahead = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      double along = turns[i][0] * slope[0] + turns[i][1] * slope[1] + turns[i][2] * slope[2];
      ahead[i] = along / Math.max(1e-300, square) - times[i];
    }
    int last = Arrays.stream(stretches).max().orElse(0);
    for (int stretch = 0; stretch <= last; stretch++) {
      int own = stretch;
      int[] frames = IntStream.range(0, ahead.length).filter(i -> stretches[i] == own).toArray();
      double middle =
          RobustStats.median(Arrays.stream(frames).mapToDouble(i -> ahead[i]).toArray());
      Arrays.stream(frames).forEach(i -> ahead[i] -= middle);
    }
    return ahead;
  }
}
