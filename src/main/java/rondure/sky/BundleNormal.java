package rondure.sky;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;

/**
 * Normal equations of a bundle of sightings with the stars' directions eliminated track by track
 * (Schur complement; Brown 1976, The bundle adjustment; from memory). Unknowns: ln f, k1, and three
 * of each frame's attitude; the reference frame's stay 0.
 */
final class BundleNormal {
  static final int SHARED = 2;
  private static final int PER_FRAME = 3;
  private static final int LOCAL = SHARED + PER_FRAME;
  private static final double HELD = 1e20;
  private static final double RIDGE = 1;

  private final double[][] matrix;
  private final double[] right;

  BundleNormal(int frames, int reference) {
    int size = SHARED + PER_FRAME * frames;
    matrix = new double[size][size];
    right = new double[size];
    for (int i = SHARED; i < size; i++) {
      boolean held = (i - SHARED) / PER_FRAME == reference;
      matrix[i][i] = held ? HELD : RIDGE; // rad⁻²: nothing beside what one star tells
    }
  }

  /** First unknown of a frame. */
  static int column(int frame) {
    return SHARED + PER_FRAME * frame;
  }

  /** Adds a row that should be zero after the step: row · step = misfit, with a standard error. */
  void addRow(double[] row, double misfit, double error) {
    double weight = 1 / (error * error);
    for (int i = 0; i < row.length; i++) {
      if (row[i] != 0) {
        right[i] += weight * row[i] * misfit;
        for (int j = 0; j < row.length; j++) {
          matrix[i][j] += weight * row[i] * row[j];
        }
      }
    }
  }

  /** Normal equations of one star's own two turns. */
  static final class Star {
    private double xx;
    private double xy;
    private double yy;
    private final double[] right = new double[2];

    /**
     * @param lines as {@link Track#add} takes them
     */
    void add(double weight, double[][] lines, double[] misfit) {
      for (int line = 0; line < 2; line++) {
        double x = lines[line][LOCAL];
        double y = lines[line][LOCAL + 1];
        xx += weight * x * x;
        xy += weight * x * y;
        yy += weight * y * y;
        right[0] += weight * x * misfit[line];
        right[1] += weight * y * misfit[line];
      }
    }

    /** The star's step when all else stays; none without sightings. */
    double[] step() {
      return solved(right[0], right[1]);
    }

    private double[] solved(double a, double b) {
      double determinant = xx * yy - xy * xy;
      if (!(determinant > 0)) {
        return new double[2];
      }
      return new double[] {(yy * a - xy * b) / determinant, (xx * b - xy * a) / determinant};
    }
  }

  /** One track's sightings, and what remains of its star when the shared unknowns have moved. */
  final class Track {
    private final int[] index;
    private final double[][] mixed;
    private final Star star = new Star();
    private int used;

    Track(int most) {
      index = new int[SHARED + PER_FRAME * most];
      mixed = new double[SHARED + PER_FRAME * most][2];
      index[1] = 1;
      used = SHARED;
    }

    /**
     * The next sighting; frames in ascending order.
     *
     * @param lines derivative of x and of y by ln f, k1, three of the attitude, two of the star
     */
    void add(int frame, double weight, double[][] lines, double[] misfit) {
      for (int k = 0; k < PER_FRAME; k++) {
        index[used + k] = column(frame) + k;
      }
      for (int line = 0; line < 2; line++) {
        double[] by = lines[line];
        for (int i = 0; i < LOCAL; i++) {
          int at = i < SHARED ? i : used + i - SHARED;
          double scaled = weight * by[i];
          right[index[at]] += scaled * misfit[line];
          mixed[at][0] += scaled * by[LOCAL];
          mixed[at][1] += scaled * by[LOCAL + 1];
          for (int j = 0; j < LOCAL; j++) {
            int other = j < SHARED ? j : index[used] + j - SHARED;
            matrix[index[at]][other] += scaled * by[j];
          }
        }
      }
      star.add(weight, lines, misfit);
      used += PER_FRAME;
    }

    /** Takes the star's own two unknowns out of the equations. */
    void eliminate() {
      for (int i = 0; i < used; i++) {
        double[] row = star.solved(mixed[i][0], mixed[i][1]);
        right[index[i]] -= row[0] * star.right[0] + row[1] * star.right[1];
        double[] target = matrix[index[i]];
        for (int j = 0; j <= i; j++) { // the lower triangle: frames come in order
          target[index[j]] -= row[0] * mixed[j][0] + row[1] * mixed[j][1];
        }
      }
    }

    /** The star's step that goes with a step of the others. */
    double[] starStep(double[] step) {
      double[] left = star.right.clone();
      for (int i = 0; i < used; i++) {
        left[0] -= mixed[i][0] * step[index[i]];
        left[1] -= mixed[i][1] * step[index[i]];
      }
      return star.solved(left[0], left[1]);
    }
  }

  /** The step, and the covariance of ln f and k1 in its rows. */
  record Step(ArrayRealVector step, Array2DRowRealMatrix covariance) {}

  Step solve() {
    for (int i = 0; i < right.length; i++) {
      for (int j = 0; j < i; j++) {
        matrix[j][i] = matrix[i][j];
      }
    }
    DecompositionSolver solver =
        new LUDecomposition(new Array2DRowRealMatrix(matrix, false), 0).getSolver();
    double[][] covariance = new double[SHARED][];
    for (int i = 0; i < SHARED; i++) {
      double[] unit = new double[right.length];
      unit[i] = 1;
      covariance[i] = solver.solve(new ArrayRealVector(unit, false)).getSubVector(0, 2).toArray();
    }
    ArrayRealVector step =
        new ArrayRealVector(solver.solve(new ArrayRealVector(right, false)).toArray(), false);
    return new Step(step, new Array2DRowRealMatrix(covariance, false));
  }
}
