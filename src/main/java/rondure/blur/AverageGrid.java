package rondure.blur;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/** The average star's grid, its rim's level taken off. */
final class AverageGrid {
  private static final double RIM_FROM = 0.85;

  /** Grid points near each other share values: one independent value for this area, px². */
  private static final double CORRELATED_PX2 = 0.5;

  private final Stamp stamp;
  private final int middle;
  private final double samplesPerPx;

  /** Places within reach that have light, px from the centroid, and their light. */
  private final double[] xs;

  private final double[] ys;
  private final double[] lights;
  private final double total;
  private final double noise;

  AverageGrid(AverageStar average, double reachPx) {
    stamp = average.stamp();
    middle = stamp.sidePx() / 2;
    samplesPerPx = average.samplesPerPx();
    double[] rim = rim();
    double level = RobustStats.median(rim);
    noise = RobustStats.madSigma(rim);
    int[] inside = inside(Math.min(reachPx, RIM_FROM * middle / samplesPerPx));
    xs = Arrays.stream(inside).mapToDouble(this::dx).toArray();
    ys = Arrays.stream(inside).mapToDouble(this::dy).toArray();
    lights = Arrays.stream(inside).mapToDouble(i -> seen(i) - level).toArray();
    total = Math.max(1e-9, mass());
  }

  private double[] rim() {
    return IntStream.range(0, stamp.sidePx() * stamp.sidePx())
        .filter(i -> radius(i) > RIM_FROM * middle && radius(i) <= middle)
        .mapToDouble(this::seen)
        .toArray();
  }

  private int[] inside(double reachPx) {
    return IntStream.range(0, stamp.sidePx() * stamp.sidePx())
        .filter(i -> radius(i) / samplesPerPx <= reachPx && !Double.isNaN(seen(i)))
        .toArray();
  }

  private double seen(int i) {
    return stamp.at(i % stamp.sidePx(), i / stamp.sidePx());
  }

  private double dx(int i) {
    return (i % stamp.sidePx() - middle) / samplesPerPx;
  }

  private double dy(int i) {
    return (i / stamp.sidePx() - middle) / samplesPerPx;
  }

  /** From the middle, in grid steps. */
  private double radius(int i) {
    int x = i % stamp.sidePx() - middle;
    int y = i / stamp.sidePx() - middle;
    return Math.sqrt(x * x + y * y);
  }

  private double mass() {
    double sum = 0;
    for (double light : lights) {
      sum += light;
    }
    return sum;
  }

  /** Mean of a function of the place, px from the centroid, weighted with the light. */
  double mean(DoubleBinaryOperator of) {
    double sum = 0;
    for (int i = 0; i < lights.length; i++) {
      sum += lights[i] * of.applyAsDouble(xs[i], ys[i]);
    }
    return sum / total;
  }

  /** Standard error of such a mean from the noise of the rim. */
  double errorOf(DoubleBinaryOperator of) {
    double squares = 0;
    for (int i = 0; i < lights.length; i++) {
      double weight = of.applyAsDouble(xs[i], ys[i]);
      squares += weight * weight;
    }
    return noise * Math.sqrt(squares * alike()) / total;
  }

  /** Second moments about the centroid that the stars were laid on. */
  Moments moments() {
    return new Moments(mean((x, y) -> x * x), mean((x, y) -> x * y), mean((x, y) -> y * y));
  }

  /** Places with light. */
  int count() {
    return lights.length;
  }

  /** Of such a place, px from the centroid. */
  double xPx(int place) {
    return xs[place];
  }

  double yPx(int place) {
    return ys[place];
  }

  double light(int place) {
    return lights[place];
  }

  /** Standard error of a value of the grid. */
  double noise() {
    return noise;
  }

  /** Values that share one independent one. */
  double alike() {
    return Math.max(1, CORRELATED_PX2 * samplesPerPx * samplesPerPx);
  }
}
