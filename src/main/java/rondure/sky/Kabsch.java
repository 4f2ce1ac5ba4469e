package rondure.sky;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import rondure.base.RobustStats;
import rondure.base.RobustWeights;

/**
 * The rotation between two sets of directions that minimises ½ Σ w |to - R from|² (Wahba 1965, SIAM
 * Review 7, 409), by singular values: H = Σ w from toᵀ = U Σ Vᵀ, R = V diag(1, 1, det V Uᵀ) Uᵀ
 * (Kabsch 1976, Acta Cryst. A32, 922; Markley 1988, J. Astronaut. Sci. 36, 245).
 */
public final class Kabsch {

  /** Median length of a two-dimensional Gaussian misfit over its standard deviation per axis. */
  private static final double MEDIAN_PER_SIGMA = Math.sqrt(2 * Math.log(2));

  private static final int START_ROUNDS = 25;
  private static final int TUKEY_ROUNDS = 20;
  private static final double SETTLED_RAD = 1e-11;
  private static final double LEAST_SCALE = 1e-9;

  /** Three parameters, and two pairs give four numbers. */
  private static final int LEAST_PAIRS = 2;

  private Kabsch() {}

  /**
   * Every pair counts by 1 / error².
   *
   * @param pairs at least two, not all along one line
   */
  public static Rotation leastSquares(List<DirectionPair> pairs) {
    if (pairs.size() < LEAST_PAIRS) {
      throw new IllegalArgumentException(
          "a rotation needs at least 2 pairs, there were " + pairs.size());
    }
    return weighted(pairs, ones(pairs.size()));
  }

  /**
   * Outliers are left out: least absolute misfits first, which gross outliers hardly pull, then
   * Tukey's weights at the median misfit's scale.
   *
   * @return empty with fewer than two pairs, or when they lie along one line so that a rotation
   *     about it stays open
   */
  public static Optional<RotationFit> robust(List<DirectionPair> pairs) {
    if (pairs.size() < LEAST_PAIRS || !isFixed(pairs)) {
      return Optional.empty();
    }
    double[] weights = ones(pairs.size());
    Rotation rotation = leastSquares(pairs);
    for (int round = 0; round < START_ROUNDS; round++) {
      double[] misfits = misfits(pairs, rotation);
      double floor = Math.max(LEAST_SCALE, 0.1 * RobustStats.median(misfits));
      Arrays.setAll(weights, i -> 1 / Math.max(floor, misfits[i]));
      rotation = weighted(pairs, weights);
    }
    double scale = scale(misfits(pairs, rotation));
    for (int round = 0; round < TUKEY_ROUNDS; round++) {
      double[] misfits = misfits(pairs, rotation);
      double last = scale(misfits);
      Arrays.setAll(weights, i -> RobustWeights.tukey(misfits[i] / last));
      Rotation better = weighted(pairs, weights);
      double change = rotation.inverse().then(better).angleRad();
      rotation = better;
      scale = last;
      if (change < SETTLED_RAD) {
        break;
      }
    }
    return Optional.of(fit(pairs, rotation, scale));
  }

  private static RotationFit fit(List<DirectionPair> pairs, Rotation rotation, double scale) {
    double[] misfits = misfits(pairs, rotation);
    double slope = 0;
    double influence = 0;
    for (int i = 0; i < misfits.length; i++) {
      double u = misfits[i] / scale;
      double weight = RobustWeights.tukey(u);
      slope += RobustWeights.tukeySlope(u, 2);
      influence += weight * weight * u * u / 2;
    }
    double parameters = 3.0 / 2;
    double left = Math.max(1, misfits.length - parameters);
    double growth = influence * misfits.length * misfits.length / (left * slope * slope);
    RotationCovariance covariance =
        Information.of(pairs, rotation).inverse().times(scale * scale * growth);
    return new RotationFit(rotation, covariance, scale);
  }

  private static double scale(double[] misfits) {
    return Math.max(LEAST_SCALE, RobustStats.median(misfits) / MEDIAN_PER_SIGMA);
  }

  private static double[] misfits(List<DirectionPair> pairs, Rotation rotation) {
    return pairs.stream().mapToDouble(p -> p.misfitRad(rotation) / p.errorRad()).toArray();
  }

  private static double[] ones(int count) {
    double[] ones = new double[count];
    Arrays.fill(ones, 1);
    return ones;
  }

  private static Rotation weighted(List<DirectionPair> pairs, double[] weights) {
    double[][] sum = new double[3][3];
    for (int i = 0; i < weights.length; i++) {
      DirectionPair pair = pairs.get(i);
      double weight = weights[i] / (pair.errorRad() * pair.errorRad());
      addOuter(sum, weight, pair.from(), pair.to());
    }
    SingularValueDecomposition svd =
        new SingularValueDecomposition(new Array2DRowRealMatrix(sum, false));
    RealMatrix v = svd.getV();
    RealMatrix ut = svd.getUT();
    double sign = determinant(v.multiply(ut)) < 0 ? -1 : 1;
    for (int row = 0; row < 3; row++) {
      v.multiplyEntry(row, 2, sign);
    }
    return Rotation.ofMatrix(v.multiply(ut).getData());
  }

  private static void addOuter(double[][] sum, double weight, Direction a, Direction b) {
    double[] from = {a.x(), a.y(), a.z()};
    double[] to = {b.x(), b.y(), b.z()};
    for (int row = 0; row < 3; row++) {
      for (int column = 0; column < 3; column++) {
        sum[row][column] += weight * from[row] * to[column];
      }
    }
  }

  private static double determinant(RealMatrix m) {
    double[][] a = m.getData();
    return a[0][0] * (a[1][1] * a[2][2] - a[1][2] * a[2][1])
        - a[0][1] * (a[1][0] * a[2][2] - a[1][2] * a[2][0])
        + a[0][2] * (a[1][0] * a[2][1] - a[1][1] * a[2][0]);
  }

  private static boolean isFixed(List<DirectionPair> pairs) {
    return Information.of(pairs, Rotation.NONE).isRegular();
  }
}
