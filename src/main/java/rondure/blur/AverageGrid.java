package rondure.blur;

import java.util.function.DoubleBinaryOperator;
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
  private final double reachPx;
  private final double level;
  private final double noise;

  AverageGrid(AverageStar average, double reachPx) {
    stamp = average.stamp();
    middle = stamp.sidePx() / 2;
    samplesPerPx = average.samplesPerPx();
    this.reachPx = Math.min(reachPx, RIM_FROM * middle / samplesPerPx);
    double[] rim = rim();
    level = RobustStats.median(rim);
    noise = RobustStats.madSigma(rim);
  }

  private double[] rim() {
    double[] values = new double[stamp.sidePx() * stamp.sidePx()];
    for (int i = 0; i < values.length; i++) {
      double radius = Math.hypot(i % stamp.sidePx() - middle, i / stamp.sidePx() - middle);
      boolean isRim = radius > RIM_FROM * middle && radius <= middle;
      values[i] = isRim ? stamp.at(i % stamp.sidePx(), i / stamp.sidePx()) : Double.NaN;
    }
    return values;
  }

  private double light(int i) {
    return stamp.at(i % stamp.sidePx(), i / stamp.sidePx()) - level;
  }

  private double dx(int i) {
    return (i % stamp.sidePx() - middle) / samplesPerPx;
  }

  private double dy(int i) {
    return (i / stamp.sidePx() - middle) / samplesPerPx;
  }

  private boolean isInside(int i) {
    return Math.hypot(dx(i), dy(i)) <= reachPx && !Double.isNaN(light(i));
  }

  private double total() {
    double sum = 0;
    for (int i = 0; i < stamp.sidePx() * stamp.sidePx(); i++) {
      sum += isInside(i) ? light(i) : 0;
    }
    return Math.max(1e-9, sum);
  }

  /** Mean of a function of the place, px from the centroid, weighted with the light. */
  double mean(DoubleBinaryOperator of) {
    double sum = 0;
    for (int i = 0; i < stamp.sidePx() * stamp.sidePx(); i++) {
      sum += isInside(i) ? light(i) * of.applyAsDouble(dx(i), dy(i)) : 0;
    }
    return sum / total();
  }

  /** Standard error of such a mean from the noise of the rim. */
  double errorOf(DoubleBinaryOperator of) {
    double squares = 0;
    for (int i = 0; i < stamp.sidePx() * stamp.sidePx(); i++) {
      double weight = isInside(i) ? of.applyAsDouble(dx(i), dy(i)) : 0;
      squares += weight * weight;
    }
    double alike = Math.max(1, CORRELATED_PX2 * samplesPerPx * samplesPerPx);
    return noise * Math.sqrt(squares * alike) / total();
  }

  /** Second moments about the centroid that the stars were laid on. */
  Moments moments() {
    return new Moments(mean((x, y) -> x * x), mean((x, y) -> x * y), mean((x, y) -> y * y));
  }

  /** Of the difference (xx - yy) / 2. */
  double spin2ErrorPx2() {
    return errorOf((x, y) -> (x * x - y * y) / 2);
  }
}
