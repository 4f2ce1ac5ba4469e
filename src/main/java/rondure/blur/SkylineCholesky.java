package rondure.blur;

import java.util.stream.IntStream;

/**
 * Cholesky's factor L of a symmetric positive matrix whose rows are empty up to some column: L is
 * empty there too (Jennings 1966, Computer J. 9, 281, from memory). With rows of at most w elements
 * the work grows as n w², for n unknowns in all.
 */
final class SkylineCholesky {
  private final int[] first;
  private final double[][] rows;

  /**
   * Factors in place.
   *
   * @param first column of each row before which it is empty
   * @param rows of the lower triangle: row i holds its columns from {@code first[i]} to i
   * @throws IllegalArgumentException when the matrix is not positive
   */
  SkylineCholesky(int[] first, double[][] rows) {
    this.first = first;
    this.rows = rows;
    for (int i = 0; i < rows.length; i++) {
      for (int j = first[i]; j < i; j++) {
        rows[i][j - first[i]] = (at(i, j) - product(i, j)) / at(j, j);
      }
      double square = at(i, i) - product(i, i);
      if (!(square > 0)) {
        throw new IllegalArgumentException("the matrix is not positive at row " + i);
      }
      rows[i][i - first[i]] = Math.sqrt(square);
    }
  }

  private double at(int row, int column) {
    return rows[row][column - first[row]];
  }

  /** Σ L[i][k] L[j][k] over the columns before j. */
  private double product(int i, int j) {
    double[] one = rows[i];
    double[] other = rows[j];
    int from = Math.max(first[i], first[j]);
    double sum = 0;
    for (int k = from; k < j; k++) {
      sum += one[k - first[i]] * other[k - first[j]];
    }
    return sum;
  }

  double[] solve(double[] right) {
    double[] solution = right.clone();
    for (int i = 0; i < solution.length; i++) {
      for (int k = first[i]; k < i; k++) {
        solution[i] -= at(i, k) * solution[k];
      }
      solution[i] /= at(i, i);
    }
    for (int i = solution.length - 1; i >= 0; i--) {
      solution[i] /= at(i, i);
      for (int k = first[i]; k < i; k++) {
        solution[k] -= at(i, k) * solution[i];
      }
    }
    return solution;
  }

  /**
   * Diagonal of the inverse Z, from its last element upwards and only where L has elements: from Lᵀ
   * Z = L⁻¹, Z[i][j] = (δ / L[j][j] - Σ L[k][j] Z[k][i]) / L[j][j] over k > j (Takahashi, Fagan
   * &amp; Chin 1973, from memory).
   */
  double[] inverseDiagonal() {
    double[][] inverse = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      inverse[i] = new double[rows[i].length];
    }
    double[] diagonal = new double[rows.length];
    for (int j = rows.length - 1; j >= 0; j--) {
      int column = j;
      int[] below = IntStream.range(j + 1, rows.length).filter(i -> first[i] <= column).toArray();
      for (int i : below) {
        inverse[i][j - first[i]] = -sum(inverse, below, i, j) / at(j, j);
      }
      diagonal[j] = (1 / at(j, j) - sum(inverse, below, j, j)) / at(j, j);
      inverse[j][j - first[j]] = diagonal[j];
    }
    return diagonal;
  }

  /** Σ L[k][j] Z[k][i] over the rows that have a column j. */
  private double sum(double[][] inverse, int[] below, int i, int j) {
    double sum = 0;
    for (int k : below) {
      int row = Math.max(k, i);
      sum += at(k, j) * inverse[row][Math.min(k, i) - first[row]];
    }
    return sum;
  }
}
