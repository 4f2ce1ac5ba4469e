package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** The skyline factor against Hipparchus's LU decomposition of the whole matrix. */
class SkylineCholeskyTest {
  private static final int SIZE = 40;

  @Test
  void solvesAndInvertsAsTheWholeMatrixDoes() {
    SplittableRandom chance = new SplittableRandom(5);
    for (int round = 0; round < 20; round++) {
      int[] first = new int[SIZE];
      for (int i = 0; i < SIZE; i++) {
        first[i] = i >= SIZE - 3 ? 0 : Math.max(0, i - chance.nextInt(9));
      }
      RealMatrix whole = positive(first, chance);
      SkylineCholesky skyline = new SkylineCholesky(first, rows(whole, first));
      double[] right = chance.doubles(SIZE, -1, 1).toArray();
      LUDecomposition known = new LUDecomposition(whole);
      double[] expected = known.getSolver().solve(new ArrayRealVector(right)).toArray();
      assertArrayEquals(expected, skyline.solve(right), 1e-12);
      RealMatrix inverse = known.getSolver().getInverse();
      double[] diagonal = skyline.inverseDiagonal();
      for (int i = 0; i < SIZE; i++) {
        assertEquals(inverse.getEntry(i, i), diagonal[i], 1e-12);
      }
    }
  }

  /** Diagonally dominant, so that it is positive (Gershgorin). */
  private static RealMatrix positive(int[] first, SplittableRandom chance) {
    RealMatrix matrix = new Array2DRowRealMatrix(SIZE, SIZE);
    for (int i = 0; i < SIZE; i++) {
      for (int j = first[i]; j < i; j++) {
        double value = chance.nextDouble(-1, 1);
        matrix.setEntry(i, j, value);
        matrix.setEntry(j, i, value);
        matrix.addToEntry(i, i, Math.abs(value));
        matrix.addToEntry(j, j, Math.abs(value));
      }
      matrix.addToEntry(i, i, 0.5);
    }
    return matrix;
  }

  private static double[][] rows(RealMatrix whole, int[] first) {
    double[][] rows = new double[SIZE][];
    for (int i = 0; i < SIZE; i++) {
      rows[i] = java.util.Arrays.copyOfRange(whole.getRow(i), first[i], i + 1);
    }
    return rows;
  }

  @Test
  void refusesWhatIsNotPositive() {
    double[][] rows = {{1}, {2, 1}};
    assertThrows(IllegalArgumentException.class, () -> new SkylineCholesky(new int[] {0, 0}, rows));
  }
}
