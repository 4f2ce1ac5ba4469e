package rondure.blur;

import java.util.Arrays;
import rondure.base.RobustStats;
import rondure.stars.AverageStar;

/**
 * Light of an average star in rings about it, the peak being 1. Of stars drawn out along a line
 * only what lies across it counts: there trails and shake leave the core alone.
 */
final class HaloRings {
  /** Breadth of a ring, half-maximum widths across. */
  private static final double STEP = 0.25;

  /** Within this radius the star's own light differs more over a ring than noise does. */
  private static final double FROM = 0.6;

  private static final int MOST_RINGS = 24;

  /** What lies nearer than this to the line of the stretch (sine of the angle) is left out. */
  private static final double ACROSS_FROM = 0.7;

  /** Rounder stars have no direction. */
  private static final double LEAST_STRETCH = 0.05;

  /** Grid points near each other share values: one independent value for this area, px². */
  private static final double CORRELATED_PX2 = 0.5;

  private static final int LEAST_VALUES = 4;

  /** No core is a Moffat's to better than this share of its light. */
  private static final double MODEL_SHARE = 0.06;

  /** Neighbours and the mesh of the sky leave as much in single rings, over the peak. */
  private static final double LEAST_ERROR = 0.0007;

  private static final double MEDIAN_VARIANCE = Math.PI / 2;

  private final double[] squares = new double[MOST_RINGS];
  private final double[] light = new double[MOST_RINGS];
  private final double[] weights = new double[MOST_RINGS];
  private int size;

  private HaloRings() {}

  int size() {
    return size;
  }

  /** Outer radius of the last ring, half-maximum widths. */
  double reach() {
    return Math.sqrt(squares[size - 1]) + STEP / 2;
  }

  /** Square of the mean radius, half-maximum widths squared. */
  double square(int ring) {
    return squares[ring];
  }

  /** Median light. */
  double light(int ring) {
    return light[ring];
  }

  /** Of the light: 1 over its variance. */
  double weight(int ring) {
    return weights[ring];
  }

  /** Rings of one half-maximum width across the stars, out to the picture's rim. */
  static HaloRings of(AverageStar average, FieldShape shape) {
    int side = average.stamp().sidePx();
    double perUnit = average.samplesPerPx() * shape.minorFwhmPx();
    int count = (int) Math.min(MOST_RINGS, Math.floor((side / 2 / perUnit - FROM) / STEP));
    double[][] values = new double[Math.max(0, count)][side * side];
    int[] counts = new int[values.length];
    boolean round = shape.moments().spin2Px2() < LEAST_STRETCH * shape.moments().meanPx2();
    double cos = Math.cos(shape.moments().positionAngleRad());
    double sin = Math.sin(shape.moments().positionAngleRad());
    for (int i = 0; i < side * side; i++) {
      double x = i % side - side / 2;
      double y = i / side - side / 2;
      double radius = Math.hypot(x, y);
      int ring = (int) Math.floor((radius / perUnit - FROM) / STEP);
      boolean across = Math.abs(y * cos - x * sin) > ACROSS_FROM * radius;
      float value = average.stamp().at(i % side, i / side);
      if (ring >= 0 && ring < values.length && (round || across) && !Float.isNaN(value)) {
        values[ring][counts[ring]++] = value;
      }
    }
    HaloRings rings = new HaloRings();
    double alike = CORRELATED_PX2 * average.samplesPerPx() * average.samplesPerPx();
    for (int ring = 0; ring < values.length; ring++) {
      double middle = FROM + (ring + 0.5) * STEP;
      rings.add(middle, Arrays.copyOf(values[ring], counts[ring]), Math.max(1, alike));
    }
    return rings;
  }

  private void add(double radius, double[] values, double alike) {
    if (values.length < LEAST_VALUES) {
      return;
    }
    double scatter = RobustStats.madSigma(values);
    double middle = RobustStats.median(values);
    double model = MODEL_SHARE * Math.max(0, middle);
    squares[size] = radius * radius;
    light[size] = middle;
    weights[size] =
        1
            / (scatter * scatter * MEDIAN_VARIANCE * alike / values.length
                + model * model
                + LEAST_ERROR * LEAST_ERROR);
    size++;
  }
}
