package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Small systems against their closed forms. */
class SymmetricSolveTest {

  /** Cramer's rule: (2 1; 1 3) x = (3, 5) → (4, 7)/5; units of a parameter do not matter. */
  @Test
  void twoEquationsAreSolvedWhateverTheirUnits() {
    for (double unit : new double[] {1e-6, 1, 1e6}) {
      double[][] matrix = {{2, unit}, {unit, 3 * unit * unit}};
      double[] solution = new SymmetricSolve(matrix, 0).solve(new double[] {3, 5 * unit});
      assertArrayEquals(new double[] {0.8, 1.4 / unit}, solution, 1e-9 * Math.max(1, 1 / unit));
    }
  }

  /** Eigenvalues of (1 c; c 1) are 1 ± c. */
  @Test
  void theConditionNumberIsThatOfTheCorrelationMatrix() {
    assertEquals(19, SymmetricSolve.condition(new double[][] {{1, 0.9}, {0.9, 1}}), 1e-9);
    assertEquals(19, SymmetricSolve.condition(new double[][] {{4, 18}, {18, 100}}), 1e-9);
  }

  @Test
  void whatNothingDependsOnStaysInPlace() {
    double[] solution =
        new SymmetricSolve(new double[][] {{2, 0}, {0, 0}}, 0).solve(new double[] {4, 0});
    assertArrayEquals(new double[] {2, 0}, solution, 1e-9);
  }
}
