package rondure.blur;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import rondure.base.RobustStats;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/**
 * An average star as seen, beside the same star as a blur budget explains it.
 *
 * @param seen the average star, its rim's level taken off, peak 1
 * @param explained on the same grid, as bright as fits best
 * @param left seen minus explained
 * @param leftShare r.m.s. of that over the seen peak, where the explained star is brighter than
 *     {@value #STAR_FROM} of its own
 */
public record ExplainedStar(
    AverageStar seen, AverageStar explained, AverageStar left, double leftShare) {
  private static final double STAR_FROM = 0.1;
  private static final double RIM_FROM = 0.85;

  /**
   * Beside the mean of some stars' images.
   *
   * @param average the average star
   * @param stars at least one: those that stand in it, or a fair sample
   */
  public static ExplainedStar of(AverageStar average, List<StarBlur> stars) {
    int side = average.stamp().sidePx();
    double[] seen = levelled(average.stamp());
    double[] drawn = drawn(average, stars);
    double peak = Arrays.stream(drawn).max().orElse(1);
    int[] star =
        IntStream.range(0, drawn.length).filter(i -> drawn[i] > STAR_FROM * peak).toArray();
    double product = Arrays.stream(star).mapToDouble(i -> seen[i] * drawn[i]).sum();
    double square = Arrays.stream(star).mapToDouble(i -> drawn[i] * drawn[i]).sum();
    double bright = Math.max(0, product / square);
    double[] left = new double[drawn.length];
    for (int i = 0; i < drawn.length; i++) {
      drawn[i] *= bright;
      left[i] = seen[i] - drawn[i];
    }
    double misfit = Arrays.stream(star).mapToDouble(i -> left[i] * left[i]).average().orElse(0);
    return new ExplainedStar(
        like(average, seen, side),
        like(average, drawn, side),
        like(average, left, side),
        Math.sqrt(misfit));
  }

  private static AverageStar like(AverageStar average, double[] light, int side) {
    float[] values = new float[light.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) light[i];
    }
    return new AverageStar(
        average.zone(), average.starCount(), average.samplesPerPx(), new Stamp(side, values));
  }

  /** The stamp row by row without the level of its rim, peak 1. */
  private static double[] levelled(Stamp stamp) {
    int side = stamp.sidePx();
    int middle = side / 2;
    double[] light = new double[side * side];
    for (int i = 0; i < light.length; i++) {
      light[i] = stamp.at(i % side, i / side);
    }
    double[] rim =
        IntStream.range(0, light.length)
            .filter(i -> Math.hypot(i % side - middle, i / side - middle) > RIM_FROM * middle)
            .mapToDouble(i -> light[i])
            .toArray();
    double level = RobustStats.median(rim);
    double peak = Arrays.stream(light).max().orElse(1) - level;
    for (int i = 0; i < light.length; i++) {
      light[i] = peak > 0 ? (light[i] - level) / peak : 0;
    }
    return light;
  }

  /**
   * The mean image on the grid of an average star, its own smoothing box included: the inverse of
   * the transform, F real and even, ∑ F cos(kx x + ky y) over the waves that fit the grid.
   */
  private static double[] drawn(AverageStar average, List<StarBlur> stars) {
    int side = average.stamp().sidePx();
    int middle = side / 2;
    double step = 2 * Math.PI * average.samplesPerPx() / side;
    double box = AverageProfile.boxPx(average);
    double[] cos = IntStream.range(0, side).mapToDouble(i -> cos(i, side)).toArray();
    double[] sin = IntStream.range(0, side).mapToDouble(i -> sin(i, side)).toArray();
    double[] light = new double[side * side];
    double[] even = new double[side];
    double[] odd = new double[side];
    for (int row = 0; row <= middle; row++) {
      Arrays.fill(even, 0);
      Arrays.fill(odd, 0);
      for (int column = -middle; column <= middle; column++) {
        double wave = mean(stars, column * step, row * step, box) * (row == 0 ? 1 : 2);
        for (int x = 0; x < side; x++) {
          int phase = Math.floorMod(column * (x - middle), side);
          even[x] += wave * cos[phase];
          odd[x] += wave * sin[phase];
        }
      }
      for (int i = 0; i < light.length; i++) {
        int phase = Math.floorMod(row * (i / side - middle), side);
        light[i] += even[i % side] * cos[phase] - odd[i % side] * sin[phase];
      }
    }
    return light;
  }

  private static double cos(int part, int side) {
    return Math.cos(2 * Math.PI * part / side);
  }

  private static double sin(int part, int side) {
    return Math.sin(2 * Math.PI * part / side);
  }

  private static double mean(List<StarBlur> stars, double kx, double ky, double boxPx) {
    double sum = 0;
    for (StarBlur star : stars) {
      sum += star.wave(kx, ky);
    }
    double smoothed = StarBlur.sinc(kx * boxPx / 2) * StarBlur.sinc(ky * boxPx / 2);
    return smoothed * sum / stars.size();
  }
}
