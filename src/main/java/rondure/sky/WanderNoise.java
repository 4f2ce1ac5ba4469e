package rondure.sky;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Error of a straight line's slope when what is measured wanders: noise that is new with each value
 * and a random walk between them (a tripod that settles, swings slowly, gives way). The residuals
 * tell the share of both by restricted likelihood (Harville 1977, J. Am. Stat. Assoc. 72, 320; from
 * memory), averaged over all shares, since few values tell it badly. Pure functions.
 */
final class WanderNoise {
  /** Variance of a step between two values over that of the noise, and how likely before. */
  private static final double[] WALKS = {0, 0.03, 0.1, 0.3, 1, 3, 10, 30, 100, 300};

  private static final double[] BEFORE = {
    0.8, 0.005, 0.01, 0.03, 0.04, 0.04, 0.03, 0.02, 0.015, 0.01
  };

  /** The stated error counts as so many values' residuals. */
  private static final double STATED_COUNT_AS = 6;

  private static final int MOST = 32;

  private WanderNoise() {}

  /**
   * Standard error of the slope of the least-squares line.
   *
   * @param times at least two, not all the same, in any order, s
   * @param values one for each time
   * @param stated standard error of a single value, > 0
   * @return in units of the values per second
   */
  static double slopeError(double[] times, double[] values, double stated) {
    int each = 1 + (times.length - 1) / MOST;
    double[] fewer = means(times, each);
    Line line = new Line(fewer, means(values, each), stated * stated / each);
    double[] logs = new double[WALKS.length];
    double[] variances = new double[WALKS.length];
    for (int k = 0; k < WALKS.length; k++) {
      logs[k] = Math.log(BEFORE[k]) + line.look(WALKS[k]);
      variances[k] = line.slopeVariance;
    }
    double most = Arrays.stream(logs).max().orElse(0);
    double sum = 0;
    double weights = 0;
    for (int k = 0; k < WALKS.length; k++) {
      double weight = Math.exp(logs[k] - most);
      sum += weight * variances[k];
      weights += weight;
    }
    return Math.sqrt(sum / weights);
  }

  /** Means of runs of values, the last run perhaps shorter. */
  private static double[] means(double[] values, int each) {
    double[] means = new double[(values.length + each - 1) / each];
    for (int k = 0; k < means.length; k++) {
      int until = Math.min(values.length, (k + 1) * each);
      means[k] = Arrays.stream(values, k * each, until).average().orElse(0);
    }
    return means;
  }

  private static final class Line {
    private final double[] times;
    private final RealVector values;
    private final RealMatrix design;
    private final double stated;
    private final RealVector slope;

    /** Of the slope, under the share last looked at. */
    private double slopeVariance;

    Line(double[] times, double[] values, double statedVariance) {
      int n = times.length;
      this.times = times;
      this.stated = statedVariance;
      this.values = new ArrayRealVector(values);
      design = new Array2DRowRealMatrix(n, 2);
      double middle = Arrays.stream(times).average().orElse(0);
      double spread = 0;
      for (int i = 0; i < n; i++) {
        design.setEntry(i, 0, 1);
        design.setEntry(i, 1, times[i] - middle);
        spread += (times[i] - middle) * (times[i] - middle);
      }
      slope = design.getColumnVector(1).mapDivide(spread);
    }

    /** Logarithm of the restricted likelihood of a share of the walk, the noise averaged over. */
    double look(double walk) {
      RealMatrix covariance = covariance(walk);
      CholeskyDecomposition cholesky = new CholeskyDecomposition(covariance, 1e-9, 1e-12);
      DecompositionSolver solver = cholesky.getSolver();
      RealMatrix weighted = solver.solve(design);
      RealMatrix normal = design.transposeMultiply(weighted);
      RealVector pull = weighted.transpose().operate(values);
      double determinant =
          normal.getEntry(0, 0) * normal.getEntry(1, 1)
              - normal.getEntry(0, 1) * normal.getEntry(1, 0);
      double a =
          normal.getEntry(1, 1) * pull.getEntry(0) - normal.getEntry(0, 1) * pull.getEntry(1);
      double b =
          normal.getEntry(0, 0) * pull.getEntry(1) - normal.getEntry(1, 0) * pull.getEntry(0);
      double explained = (a * pull.getEntry(0) + b * pull.getEntry(1)) / determinant;
      double left = Math.max(0, values.dotProduct(solver.solve(values)) - explained);
      double freedom = times.length - 2 + STATED_COUNT_AS;
      double noise = (STATED_COUNT_AS * stated + left) / freedom;
      slopeVariance = noise * slope.dotProduct(covariance.operate(slope));
      double volume = Math.log(cholesky.getDeterminant()) + Math.log(determinant);
      return -volume / 2 - freedom / 2 * Math.log(noise);
    }

    private RealMatrix covariance(double walk) {
      int n = times.length;
      double first = Arrays.stream(times).min().orElse(0);
      double step = (Arrays.stream(times).max().orElse(0) - first) / Math.max(1, n - 1);
      RealMatrix covariance = new Array2DRowRealMatrix(n, n);
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          double walked = step > 0 ? walk * (Math.min(times[i], times[j]) - first) / step : 0;
          covariance.setEntry(i, j, walked + (i == j ? 1 : 0));
        }
      }
      return covariance;
    }
  }
}
