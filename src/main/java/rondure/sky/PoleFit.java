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
record PoleFit(Vec spin, double errorRadPerS) {
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
      right = right.add(weight.multiply(column(rate.rate())));
    }
    Vec free = Vec.of(inverse(weights).multiply(right).getColumn(0));
    Vec spin = free.withLength(omega);
    RealMatrix covariance = null;
    for (int step = 0; step < STEPS; step++) {
      RealMatrix basis = tangent(spin);
      RealMatrix normal = basis.transpose().multiply(weights).multiply(basis);
      covariance = inverse(normal);
      RealMatrix pull = basis.transpose().multiply(weights).multiply(column(free.minus(spin)));
      Vec move = Vec.of(basis.multiply(covariance.multiply(pull)).getColumn(0));
      spin = spin.plus(move).withLength(omega);
    }
    double error = Math.sqrt(covariance.getEntry(0, 0) + covariance.getEntry(1, 1));
    return new PoleFit(spin, error);
  }

  private static RealMatrix inverse(RealMatrix matrix) {
    return new LUDecomposition(matrix, 0).getSolver().getInverse();
  }

  private static RealMatrix column(Vec v) {
    return new Array2DRowRealMatrix(v.toArray());
  }

  private static RealMatrix weight(PieceRate rate, double alongError) {
    RealMatrix covariance = new Array2DRowRealMatrix(3, 3);
    Rotation back = rate.turn().inverse();
    Vec[] axes = {new Vec(1, 0, 0), new Vec(0, 1, 0), new Vec(0, 0, 1)};
    for (int k = 0; k < 3; k++) {
      RealMatrix axis = column(axes[k].turned(back));
      double error = rate.errors().axesRadPerS().at(k);
      covariance = covariance.add(axis.multiply(axis.transpose()).scalarMultiply(error * error));
    }
    double clock = rate.errors().clockRadPerS().length();
    RealMatrix along = column(rate.rate().withLength(Math.hypot(alongError, clock)));
    covariance = covariance.add(along.multiply(along.transpose()));
    return inverse(covariance);
  }

  /** Two directions across a vector, as columns. */
  private static RealMatrix tangent(Vec v) {
    Vec[] across = v.across();
    RealMatrix basis = new Array2DRowRealMatrix(3, 2);
    basis.setColumn(0, across[0].toArray());
    basis.setColumn(1, across[1].toArray());
    return basis;
  }
}
