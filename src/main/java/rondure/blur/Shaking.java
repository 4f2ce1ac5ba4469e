package rondure.blur;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/** A shake of one size: a Gaussian expectation of its covariance about zero, integrated out. */
final class Shaking {
  /** Round part of a shake over its spin-2. */
  private static final double USUAL_ROUND = 1.2;

  private final double[][] spread;
  private final double logWeight;

  Shaking(double[][] information, double px2, double otherPx2, double logWeight) {
    RealMatrix precision = new Array2DRowRealMatrix(information, true);
    double logPrior = 0;
    for (int j = 0; j < SmearSum.SIZE; j++) {
      // Pitch and yaw shake; what involves the optical axis hardly does.
      double inPlane = j == 0 || j == 3 ? px2 : px2 / Math.sqrt(2);
      double sigma = j == 0 || j == 1 || j == 3 ? inPlane : otherPx2;
      precision.addToEntry(j, j, 1 / (sigma * sigma));
      logPrior += 2 * Math.log(sigma);
    }
    LUDecomposition decomposed = new LUDecomposition(precision);
    spread = decomposed.getSolver().getInverse().getData();
    this.logWeight = logWeight - (Math.log(decomposed.getDeterminant()) + logPrior) / 2;
  }

  /** Log of how much likelier the stars are with this shake than without any. */
  double logGain(double[] left) {
    double sum = 0;
    for (int j = 0; j < left.length; j++) {
      sum += left[j] * SmearSum.dot(spread[j], left);
    }
    return logWeight + sum / 2;
  }

  /** Mean second moment per axis at the centre of the shake that the stars then show. */
  double roundPx2(double[] left) {
    double xx = SmearSum.dot(spread[0], left);
    double xy = SmearSum.dot(spread[1], left);
    double yy = SmearSum.dot(spread[3], left);
    return USUAL_ROUND * Math.hypot((xx - yy) / 2, xy);
  }
}
