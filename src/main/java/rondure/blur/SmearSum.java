package rondure.blur;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import rondure.base.RobustStats;
import rondure.base.RobustWeights;

/**
 * What the directions of a frame's stars say about the covariance of all turning that smeared them,
 * the sky's and the camera's together: M = B Σ Bᵀ.
 *
 * <p>Σ is a symmetric 3 x 3 matrix in camera axes, scaled by the square of the focal length so that
 * it is px² at the image centre; as a vector (xx, xy, xz, yy, yz, zz). The likelihood of the stars'
 * spin-2 parts is Gaussian in it, the lens (radial r² and r⁴) integrated out.
 */
final class SmearSum {
  static final int SIZE = 6;
  static final int RADIAL_TERMS = 2;

  /** Stretch of a lens in the corner before anything is known, px². */
  private static final double LENS_PX2 = 1;

  /** So many places of a frame miss the model each in its own way, the stars of one together. */
  private static final double INDEPENDENT_PLACES = 24;

  private static final double MOST_ALIKE = 3;

  /** Cauchy's weight first: strays among few stars must not turn the pattern. */
  private static final double CAUCHY = 2.4;

  /** Then none at all this many standard deviations off: a lamp, a blend, a streak. */
  private static final double STRAY = 6;

  private static final double TUKEY_FULL = 4.685;

  /** Median length of two normal numbers, √(2 ln 2). */
  private static final double MEDIAN_OF_TWO = Math.sqrt(2 * Math.log(2));

  private static final int ROUNDS = 8;

  /** Keeps what no star tells solvable, 1/px⁴. */
  private static final double WEAK = 1e-4;

  private final double[][] information;
  private final double[] pull;
  private final double[] round;
  private final boolean[] strays;

  private SmearSum(double[][] information, double[] pull, double[] round, boolean[] strays) {
    this.information = information;
    this.pull = pull;
    this.round = round;
    this.strays = strays;
  }

  /** Whether star i is stretched unlike the others: a lamp, a blend, a streak. */
  boolean stray(int i) {
    return strays[i];
  }

  /** Λ: precision of Σ. */
  double[][] information() {
    double[][] copy = new double[SIZE][];
    for (int i = 0; i < SIZE; i++) {
      copy[i] = information[i].clone();
    }
    return copy;
  }

  /** b: the log-likelihood is bᵀΣ - ½ ΣᵀΛΣ. */
  double[] pull() {
    return pull.clone();
  }

  /** Mean second moment per axis that Σ adds, mean over the stars, px². */
  double roundPx2(double[] sigma) {
    return dot(round, sigma);
  }

  static SmearSum of(SmearField field) {
    int count = field.count();
    int terms = SIZE + RADIAL_TERMS;
    SmearRows rows = SmearRows.of(field);
    double[] misfits = SmearRows.fromMedian(field);
    double[] weights = new double[count];
    double[][] normal = new double[terms][terms];
    double[] right = new double[terms];
    double scale = 1;
    for (int pass = 0; pass < ROUNDS; pass++) {
      scale = Math.max(1, RobustStats.median(misfits) / MEDIAN_OF_TWO);
      for (int i = 0; i < count; i++) {
        double off = misfits[i] / scale;
        weights[i] =
            pass < ROUNDS / 2
                ? 1 / (1 + Math.pow(off / CAUCHY, 2))
                : RobustWeights.tukey(off * TUKEY_FULL / STRAY);
      }
      normal = new double[terms][terms];
      right = new double[terms];
      rows.add(weights, normal, right);
      misfits = rows.misfits(solved(normal, right));
    }
    double alike = Math.max(1, Math.min(MOST_ALIKE, count / INDEPENDENT_PLACES));
    boolean[] strays = new boolean[count];
    for (int i = 0; i < count; i++) {
      strays[i] = misfits[i] > STRAY * scale;
    }
    double[][] left = withoutLens(normal, right, alike * scale * scale);
    return new SmearSum(Arrays.copyOf(left, SIZE), left[SIZE], rows.round(), strays);
  }

  private static double[] solved(double[][] normal, double[] right) {
    RealMatrix held = new Array2DRowRealMatrix(normal, true);
    for (int j = 0; j < right.length; j++) {
      held.addToEntry(j, j, WEAK);
    }
    RealVector answer =
        new LUDecomposition(held).getSolver().solve(new ArrayRealVector(right, true));
    return answer.toArray();
  }

  /** The precision of Σ alone, row by row, and as last row the pull. */
  private static double[][] withoutLens(double[][] normal, double[] right, double alike) {
    RealMatrix all = new Array2DRowRealMatrix(normal, true).scalarMultiply(1 / alike);
    RealMatrix lens = all.getSubMatrix(SIZE, SIZE + 1, SIZE, SIZE + 1);
    for (int term = 0; term < RADIAL_TERMS; term++) {
      lens.addToEntry(term, term, 1 / (LENS_PX2 * LENS_PX2));
    }
    RealMatrix cross = all.getSubMatrix(0, SIZE - 1, SIZE, SIZE + 1);
    RealMatrix taken = cross.multiply(new LUDecomposition(lens).getSolver().getInverse());
    RealMatrix left =
        all.getSubMatrix(0, SIZE - 1, 0, SIZE - 1).subtract(taken.multiplyTransposed(cross));
    double[] moved = taken.operate(new double[] {right[SIZE] / alike, right[SIZE + 1] / alike});
    double[][] rows = Arrays.copyOf(left.getData(), SIZE + 1);
    rows[SIZE] = new double[SIZE];
    for (int j = 0; j < SIZE; j++) {
      rows[SIZE][j] = right[j] / alike - moved[j];
    }
    return rows;
  }

  static double dot(double[] one, double[] two) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * two[i];
    }
    return sum;
  }
}
