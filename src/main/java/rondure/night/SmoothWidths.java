package rondure.night;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealVector;

/**
 * Whether widths that differ vary smoothly over the field, as a tilted or curved field of focus
 * makes them: then the squares of the widths are a core and the square of a disc that is linear in
 * the place, so a quadratic of it.
 */
final class SmoothWidths {
  /** Of a quadratic in two variables. */
  private static final int TERMS = 6;

  /** Fewer points can be met by any quadratic. */
  private static final int LEAST_POINTS = 10;

  /** Stars of one place share their width to 10 or 20 %, so its square to twice that. */
  private static final double LARGEST_SCATTER = 0.3;

  /** How often points of unrelated widths would vary so smoothly by chance. */
  private static final double BY_CHANCE = 0.01;

  private static final int ROUNDS = 6;

  /** Weights go by the fitted square, but not below this share of its mean. */
  private static final double LEAST_SHARE = 0.1;

  private SmoothWidths() {}

  /**
   * True when a quadratic leaves little of the scatter, and much less than chance would.
   *
   * @param xs places, any unit
   * @param ys places
   * @param widths of the points, one for each place
   */
  static boolean explain(double[] xs, double[] ys, double[] widths) {
    int count = widths.length;
    if (count < LEAST_POINTS) {
      return false;
    }
    double[][] rows = rows(xs, ys);
    double[] squares = new double[count];
    double mean = 0;
    for (int i = 0; i < count; i++) {
      squares[i] = widths[i] * widths[i];
      mean += squares[i] / count;
    }
    double[] fitted = squares.clone();
    for (int round = 0; round < ROUNDS; round++) {
      fitted = fit(rows, squares, scales(fitted, mean));
    }
    double[] scale = scales(fitted, mean);
    double left = sum(squares, fitted, scale);
    double all = sum(squares, level(squares, scale), scale);
    int free = count - TERMS;
    double ratio = (all - left) / (TERMS - 1) / Math.max(1e-12, left / free);
    double chance =
        1 - new FDistribution(TERMS - 1, free).cumulativeProbability(Math.max(0, ratio));
    return Math.sqrt(left / free) <= LARGEST_SCATTER && chance < BY_CHANCE;
  }

  /** 1, x, y, x², xy, y² about the middle, in units of the spread. */
  private static double[][] rows(double[] xs, double[] ys) {
    double[] x = scaled(xs);
    double[] y = scaled(ys);
    double[][] rows = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      rows[i] = new double[] {1, x[i], y[i], x[i] * x[i], x[i] * y[i], y[i] * y[i]};
    }
    return rows;
  }

  private static double[] scaled(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    double spread = 0;
    for (double value : values) {
      spread = Math.max(spread, Math.abs(value - mean));
    }
    double unit = Math.max(1e-9, spread);
    return Arrays.stream(values).map(v -> (v - mean) / unit).toArray();
  }

  private static double[] scales(double[] fitted, double mean) {
    return Arrays.stream(fitted).map(f -> Math.max(LEAST_SHARE * mean, f)).toArray();
  }

  private static double[] fit(double[][] rows, double[] squares, double[] scale) {
    double[][] weighted = new double[rows.length][TERMS];
    double[] right = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      for (int k = 0; k < TERMS; k++) {
        weighted[i][k] = rows[i][k] / scale[i];
      }
      right[i] = squares[i] / scale[i];
    }
    QRDecomposition solver = new QRDecomposition(new Array2DRowRealMatrix(weighted, false), 1e-9);
    if (!solver.getSolver().isNonSingular()) {
      return level(squares, scale);
    }
    RealVector terms = solver.getSolver().solve(new ArrayRealVector(right, false));
    return new Array2DRowRealMatrix(rows, false).operate(terms).toArray();
  }

  /** The weighted mean, for each point. */
  private static double[] level(double[] squares, double[] scale) {
    double sum = 0;
    double weight = 0;
    for (int i = 0; i < squares.length; i++) {
      double own = 1 / (scale[i] * scale[i]);
      sum += own * squares[i];
      weight += own;
    }
    double[] level = new double[squares.length];
    Arrays.fill(level, sum / weight);
    return level;
  }

  private static double sum(double[] squares, double[] fitted, double[] scale) {
    double sum = 0;
    for (int i = 0; i < squares.length; i++) {
      double off = (squares[i] - fitted[i]) / scale[i];
      sum += off * off;
    }
    return sum;
  }
}
