package rondure.blur;

import java.util.Arrays;
import rondure.base.RobustStats;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/** Light of an average star around rings, its rim's level taken off, with errors; peak about 1. */
final class AverageProfile {
  private static final double RIM_FROM = 0.85;

  /** Values that a grid point of the average is made from, and the most it reaches for them. */
  private static final double VALUES_NEAR = 8;

  private static final double REACH_MOST_PX = 0.75;

  /** Of all pixels, those of a mosaic count half: between both. */
  private static final double PER_PX2 = 0.75;

  /** Mean radius of each ring, px. */
  final double[] radiiPx;

  final double[] light;

  /**
   * From the scatter at the rim, and from where pixels happen to lie: the values that make a grid
   * point stand evenly in a square about it, but are few.
   */
  final double[] errors;

  /** Side of the square over which a grid point averages. */
  final double boxPx;

  /**
   * @param average zone's average star
   * @param mostPx farthest ring
   */
  AverageProfile(AverageStar average, double mostPx) {
    Stamp stamp = average.stamp();
    int middle = stamp.sidePx() / 2;
    double samples = average.samplesPerPx();
    boxPx = boxPx(average);
    double[] rim = new double[stamp.sidePx() * stamp.sidePx()];
    Arrays.fill(rim, Double.NaN);
    int size = (int) Math.min(RIM_FROM * middle, mostPx * samples) + 1;
    double[][] rings = new double[3][size];
    for (int i = 0; i < rim.length; i++) {
      int x = i % stamp.sidePx();
      int y = i / stamp.sidePx();
      double radius = Math.hypot(x - middle, y - middle);
      int ring = (int) Math.rint(radius);
      if (radius > RIM_FROM * middle && radius <= middle) {
        rim[i] = stamp.at(x, y);
      } else if (ring < size) {
        rings[0][ring] += radius / samples;
        rings[1][ring] += stamp.at(x, y);
        rings[2][ring]++;
      }
    }
    double level = RobustStats.median(rim);
    double alike = Math.max(1, Math.pow(boxPx * samples, 2));
    double noise = RobustStats.madSigma(rim) * Math.sqrt(alike);
    radiiPx = new double[size];
    light = new double[size];
    errors = new double[size];
    for (int ring = 0; ring < size; ring++) {
      radiiPx[ring] = rings[0][ring] / rings[2][ring];
      light[ring] = rings[1][ring] / rings[2][ring] - level;
    }
    for (int ring = 0; ring < size; ring++) {
      double sampling = slope(ring) * boxPx / Math.sqrt(12 * VALUES_NEAR);
      double independent = Math.max(1, rings[2][ring] / alike);
      errors[ring] =
          Math.hypot(noise / Math.sqrt(rings[2][ring]), sampling / Math.sqrt(independent));
    }
  }

  /** How steeply the light falls about a ring, per px. */
  private double slope(int ring) {
    int in = Math.max(0, ring - 1);
    int out = Math.min(light.length - 1, ring + 1);
    return out > in ? Math.abs(light[in] - light[out]) / (radiiPx[out] - radiiPx[in]) : 0;
  }

  /** Side of the square over which a grid point of an average star averages. */
  static double boxPx(AverageStar average) {
    double wanted = Math.sqrt(VALUES_NEAR / (PER_PX2 * average.starCount())) / 2;
    return 2 * Math.max(0.5 / average.samplesPerPx(), Math.min(REACH_MOST_PX, wanted));
  }
}
