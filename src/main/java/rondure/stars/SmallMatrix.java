package rondure.stars;

/** Solving of small symmetric positive systems, in place, row-major. */
final class SmallMatrix {
  private SmallMatrix() {}

  /**
   * Cholesky factor L of {@code matrix} = L Lᵀ, written to the lower triangle of {@code factor}.
   *
   * @return false when the matrix is not positive
   */
  static boolean factorise(double[] matrix, double[] factor, int size) {
    for (int row = 0; row < size; row++) {
      for (int column = 0; column <= row; column++) {
        double sum = matrix[row * size + column];
        for (int i = 0; i < column; i++) {
          sum -= factor[row * size + i] * factor[column * size + i];
        }
        if (row != column) {
          factor[row * size + column] = sum / factor[column * size + column];
        } else if (sum > 0) {
          factor[row * size + row] = Math.sqrt(sum);
        } else {
          return false;
        }
      }
    }
    return true;
  }

  /** Replaces {@code vector} by the solution of L Lᵀ s = vector. */
  static void solve(double[] factor, double[] vector, int size) {
    for (int row = 0; row < size; row++) {
      double sum = vector[row];
      for (int i = 0; i < row; i++) {
        sum -= factor[row * size + i] * vector[i];
      }
      vector[row] = sum / factor[row * size + row];
    }
    for (int row = size - 1; row >= 0; row--) {
      double sum = vector[row];
      for (int i = row + 1; i < size; i++) {
        sum -= factor[i * size + row] * vector[i];
      }
      vector[row] = sum / factor[row * size + row];
    }
  }

  /** vᵀ A w for a symmetric A of which the lower triangle is filled. */
  static double form(double[] matrix, double[] left, double[] right, int size) {
    double sum = 0;
    for (int row = 0; row < size; row++) {
      for (int column = 0; column < size; column++) {
        double entry = matrix[Math.max(row, column) * size + Math.min(row, column)];
        sum += left[row] * entry * right[column];
      }
    }
    return sum;
  }
}
