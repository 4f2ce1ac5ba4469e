package rondure.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cuts a path of three components over time into straight pieces: least sum of squared misfits over
 * noise plus a price for each piece, exact by dynamic programming (optimal partitioning: Jackson et
 * al. 2005, IEEE Signal Process. Lett. 12, 105; from memory). Costs grow with the square of the
 * number of points, cheaply.
 */
final class PathPieces {
  private static final int AXES = 3;

  /**
   * A straight piece.
   *
   * @param from first point
   * @param until after its last point
   * @param middle mean time
   * @param level value at the mean time
   * @param slope per second; zero for a single point
   * @param spread sum of squared times about the mean, s²
   */
  record Piece(int from, int until, double middle, Vec level, Vec slope, double spread) {
    int count() {
      return until - from;
    }

    Vec at(double time) {
      return level.plus(slope.times(time - middle));
    }
  }

  private final double[][] sums;

  private PathPieces(double[] times, Vec[] path, Vec noise) {
    this.sums = sums(times, path, noise);
  }

  /**
   * @param times increasing, s
   * @param path three components for each time
   * @param noise of each component, 1 σ, > 0
   * @param price of a piece beyond the first, in units of squared noise
   */
  static List<Piece> of(double[] times, Vec[] path, Vec noise, double price) {
    PathPieces pieces = new PathPieces(times, path, noise);
    int n = times.length;
    double[] best = new double[n + 1];
    int[] from = new int[n + 1];
    Arrays.fill(best, Double.POSITIVE_INFINITY);
    best[0] = -price;
    for (int until = 1; until <= n; until++) {
      for (int start = 0; start < until; start++) {
        double cost = best[start] + price + pieces.misfit(start, until);
        if (cost < best[until]) {
          best[until] = cost;
          from[until] = start;
        }
      }
    }
    List<Piece> list = new ArrayList<>();
    for (int until = n; until > 0; until = from[until]) {
      list.add(0, piece(times, path, from[until], until));
    }
    return list;
  }

  // Rows: count, t, t², then for each axis v/noise, t v/noise, v²/noise²; running sums.
  private static double[][] sums(double[] times, Vec[] path, Vec noise) {
    int n = times.length;
    double[][] sums = new double[3 + 3 * AXES][n + 1];
    double start = n > 0 ? times[0] : 0;
    for (int i = 0; i < n; i++) {
      double t = times[i] - start;
      add(sums[0], i, 1);
      add(sums[1], i, t);
      add(sums[2], i, t * t);
      for (int axis = 0; axis < AXES; axis++) {
        double v = path[i].at(axis) / noise.at(axis);
        add(sums[3 + 3 * axis], i, v);
        add(sums[4 + 3 * axis], i, t * v);
        add(sums[5 + 3 * axis], i, v * v);
      }
    }
    return sums;
  }

  private static void add(double[] row, int i, double value) {
    row[i + 1] = row[i] + value;
  }

  private double sum(int row, int from, int until) {
    return sums[row][until] - sums[row][from];
  }

  private double misfit(int from, int until) {
    double n = until - from;
    if (n < 3) {
      return 0;
    }
    double meanT = sum(1, from, until) / n;
    double spread = Math.max(1e-12, sum(2, from, until) - n * meanT * meanT);
    double misfit = 0;
    for (int axis = 0; axis < AXES; axis++) {
      double meanV = sum(3 + 3 * axis, from, until) / n;
      double cross = sum(4 + 3 * axis, from, until) - n * meanT * meanV;
      double square = sum(5 + 3 * axis, from, until) - n * meanV * meanV;
      misfit += Math.max(0, square - cross * cross / spread);
    }
    return misfit;
  }

  /** The line through the points from one to before another. */
  static Piece piece(double[] times, Vec[] path, int from, int until) {
    int n = until - from;
    double middle = 0;
    Vec level = Vec.ZERO;
    for (int i = from; i < until; i++) {
      middle += times[i] / n;
      level = level.plus(path[i].times(1.0 / n));
    }
    double spread = 0;
    Vec cross = Vec.ZERO;
    for (int i = from; i < until; i++) {
      double t = times[i] - middle;
      spread += t * t;
      cross = cross.plus(path[i].times(t));
    }
    Vec slope = spread > 0 ? cross.times(1 / spread) : Vec.ZERO;
    return new Piece(from, until, middle, level, slope, spread);
  }
}
