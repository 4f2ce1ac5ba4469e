package rondure.sky;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * The sky's spin from stretches that agree: least squares on the sphere |spin| = sidereal rate.
 *
 * @param spin in the sky's own axes, rad/s
 * @param errorRadPerS standard error of its direction, r.m.s. over both ways, times the rate
 */
record PoleFit(double[] spin, double errorRadPerS) {
  private static final int STEPS = 8;

  /**
   * @param rates at least one
   * @param scaleError share by which the focal length, and so the rate, may be wrong
   */
  static PoleFit of(List<PieceRate> rates, double scaleError) {
    double omega = SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    RealMatrix weights = new Array2DRowRealMatrix(3, 3);
    RealMatrix right = new Array2DRowRealMatrix(3, 1);
    for (PieceRate rate : rates) {
      RealMatrix weight = weight(rate, scaleError * omega);
      weights = weights.add(weight);
      right = right.add(weight.multiply(new Array2DRowRealMatrix(rate.rate())));
    }
    double[] free = new LUDecomposition(weights).getSolver().solve(right).getColumn(0);
    double[] spin = Vec.times(free, omega / Vec.length(free));
    RealMatrix covariance = null;
    for (int step = 0; step < STEPS; step++) {
      RealMatrix basis = tangent(spin);
      RealMatrix normal = basis.transpose().multiply(weights).multiply(basis);
      covariance = new LUDecomposition(normal).getSolver().getInverse();
      RealMatrix off = new Array2DRowRealMatrix(Vec.minus(free, spin));
      double[] move =
          basis
              .multiply(covariance.multiply(basis.transpose().multiply(weights).multiply(off)))
              .getColumn(0);
      spin = Vec.plus(spin, move);
      spin = Vec.times(spin, omega / Vec.length(spin));
    }
    double error = Math.sqrt(covariance.getEntry(0, 0) + covariance.getEntry(1, 1));
    return new PoleFit(spin, error);
  }

  private static RealMatrix weight(PieceRate rate, double alongError) {
    RealMatrix covariance = new Array2DRowRealMatrix(3, 3);
    Rotation back = rate.turn().inverse();
    double[][] axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    for (int k = 0; k < 3; k++) {
      RealMatrix axis = new Array2DRowRealMatrix(Vec.turned(back, axes[k]));
      double error = rate.errors()[k];
      covariance = covariance.add(axis.multiply(axis.transpose()).scalarMultiply(error * error));
    }
    RealMatrix along =
        new Array2DRowRealMatrix(Vec.times(rate.rate(), 1 / Vec.length(rate.rate())));
    covariance =
        covariance.add(along.multiply(along.transpose()).scalarMultiply(alongError * alongError));
    return new LUDecomposition(covariance, 1e-60).getSolver().getInverse();
  }

  /** Two directions across a vector, as columns. */
  private static RealMatrix tangent(double[] v) {
    Direction axis = Direction.of(v[0], v[1], v[2]);
    double[] helper = Math.abs(axis.x()) < 0.7 ? new double[] {1, 0, 0} : new double[] {0, 1, 0};
    double[] first = cross(Vec.of(axis), helper);
    first = Vec.times(first, 1 / Vec.length(first));
    double[] second = cross(Vec.of(axis), first);
    RealMatrix basis = new Array2DRowRealMatrix(3, 2);
    basis.setColumn(0, first);
    basis.setColumn(1, second);
    return basis;
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }
}
