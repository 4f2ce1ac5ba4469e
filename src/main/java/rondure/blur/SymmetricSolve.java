package rondure.blur;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealMatrix;

/** Small symmetric positive systems, scaled so that units do not matter. */
final class SymmetricSolve {
  private static final double TINY = 1e-12;

  private final double[] scale;
  private final DecompositionSolver solver;

  /**
   * @param matrix symmetric; a parameter that nothing depends on keeps its place
   * @param damping added to the unit diagonal of the scaled matrix
   */
  SymmetricSolve(double[][] matrix, double damping) {
    scale = scales(matrix);
    double[][] scaled = scaled(matrix, scale);
    for (int i = 0; i < scaled.length; i++) {
      scaled[i][i] += damping + TINY;
    }
    solver =
        new CholeskyDecomposition(new Array2DRowRealMatrix(scaled, false), 1e-9, 0).getSolver();
  }

  double[] solve(double[] right) {
    double[] scaled = new double[right.length];
    for (int i = 0; i < right.length; i++) {
      scaled[i] = right[i] * scale[i];
    }
    double[] solution = solver.solve(new ArrayRealVector(scaled, false)).toArray();
    for (int i = 0; i < right.length; i++) {
      solution[i] *= scale[i];
    }
    return solution;
  }

  /** Largest over smallest eigenvalue once every diagonal element is scaled to 1. */
  static double condition(double[][] matrix) {
    RealMatrix scaled = new Array2DRowRealMatrix(scaled(matrix, scales(matrix)), false);
    double[] values = new EigenDecompositionSymmetric(scaled).getEigenvalues();
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (double value : values) {
      least = Math.min(least, Math.abs(value));
      most = Math.max(most, Math.abs(value));
    }
    return most / Math.max(TINY, least);
  }

  private static double[] scales(double[][] matrix) {
    double[] scales = new double[matrix.length];
    for (int i = 0; i < matrix.length; i++) {
      scales[i] = matrix[i][i] > 0 ? 1 / Math.sqrt(matrix[i][i]) : 0;
    }
    return scales;
  }

  private static double[][] scaled(double[][] matrix, double[] scale) {
    double[][] result = new double[matrix.length][matrix.length];
    for (int row = 0; row < matrix.length; row++) {
      for (int column = 0; column < matrix.length; column++) {
        double mean = (matrix[row][column] + matrix[column][row]) / 2;
        result[row][column] = mean * (scale[row] * scale[column]);
      }
      result[row][row] = 1;
    }
    return result;
  }
}
