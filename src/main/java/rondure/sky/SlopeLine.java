package rondure.sky;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/** A straight line through values of known times whose noise has a random walk of a given share. */
final class SlopeLine {
  private final RealMatrix design;
  private final DecompositionSolver solver;
  private final double a11;
  private final double a12;
  private final double a22;
  private final double volume;
  private final double slopeVariance;

  /**
   * What a line leaves.
   *
   * @param volume logarithm of the determinants of noise and line
   * @param left weighted squares of the residuals over the stated variance
   * @param freedom values less the line's two
   * @param slopeVariance of the plain least-squares slope when the noise is as stated
   */
  record Look(double volume, double left, int freedom, double slopeVariance) {

    /** Logarithm of the restricted likelihood when the noise's variance is so many times stated. */
    double log(double size) {
      return -(volume + freedom * Math.log(size) + left / size) / 2;
    }
  }

  /**
   * @param times at least two, not all the same, in any order
   * @param walk variance of the walk between two values over that of the noise
   */
  SlopeLine(double[] times, double walk) {
    int n = times.length;
    design = new Array2DRowRealMatrix(n, 2);
    double middle = Arrays.stream(times).average().orElse(0);
    double spread = 0;
    for (int i = 0; i < n; i++) {
      design.setEntry(i, 0, 1);
      design.setEntry(i, 1, times[i] - middle);
      spread += (times[i] - middle) * (times[i] - middle);
    }
    RealMatrix covariance = covariance(times, walk);
    CholeskyDecomposition cholesky = new CholeskyDecomposition(covariance, 1e-9, 1e-12);
    solver = cholesky.getSolver();
    RealMatrix normal = design.transposeMultiply(solver.solve(design));
    a11 = normal.getEntry(0, 0);
    a12 = normal.getEntry(0, 1);
    a22 = normal.getEntry(1, 1);
    volume = Math.log(cholesky.getDeterminant()) + Math.log(a11 * a22 - a12 * a12);
    RealVector slope = design.getColumnVector(1).mapDivide(spread);
    slopeVariance = slope.dotProduct(covariance.operate(slope));
  }

  /**
   * @param statedVariance of a value, > 0
   */
  Look look(double[] values, double statedVariance) {
    RealVector seen = new ArrayRealVector(values);
    RealVector solved = solver.solve(seen);
    RealVector pull = design.transpose().operate(solved);
    double determinant = a11 * a22 - a12 * a12;
    double a = a22 * pull.getEntry(0) - a12 * pull.getEntry(1);
    double b = a11 * pull.getEntry(1) - a12 * pull.getEntry(0);
    double explained = (a * pull.getEntry(0) + b * pull.getEntry(1)) / determinant;
    double left = Math.max(0, seen.dotProduct(solved) - explained);
    return new Look(
        volume, left / statedVariance, values.length - 2, slopeVariance * statedVariance);
  }

  private static RealMatrix covariance(double[] times, double walk) {
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
