package rondure.night;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The second moment of stars against the position of the focus: M = least + curvature (p - at)²,
 * because the disc of defocus grows linearly with p and adds its diameter squared over 16.
 *
 * @param at position of the minimum
 * @param atError standard error of it, by the delta method
 * @param leastPx2 second moment at the minimum
 * @param leastErrorPx2 standard error of it
 * @param curvaturePx2 growth for one step away from it, > 0
 * @param misfit sum of the squared residuals over variance
 * @param logVolume half the logarithm of the determinant of the terms' covariance: how much room
 *     the data leave them
 */
record Parabola(
    double at,
    double atError,
    double leastPx2,
    double leastErrorPx2,
    double curvaturePx2,
    double misfit,
    double logVolume) {

  private static final int TERMS = 3;

  /**
   * Weighted least squares; empty when fewer than three positions differ or there is no minimum.
   *
   * @param positions of the focus, any unit
   * @param px2 second moments there
   * @param sigma standard errors of these, > 0
   */
  static Optional<Parabola> fit(double[] positions, double[] px2, double[] sigma) {
    if (positions.length < TERMS) {
      return Optional.empty();
    }
    double middle = Arrays.stream(positions).average().orElseThrow();
    double[][] rows = new double[positions.length][];
    double[] right = new double[positions.length];
    for (int i = 0; i < rows.length; i++) {
      double p = positions[i] - middle;
      rows[i] = new double[] {1 / sigma[i], p / sigma[i], p * p / sigma[i]};
      right[i] = px2[i] / sigma[i];
    }
    RealMatrix design = MatrixUtils.createRealMatrix(rows);
    QRDecomposition solver = new QRDecomposition(design, 1e-10);
    if (!solver.getSolver().isNonSingular()) {
      return Optional.empty();
    }
    RealVector seen = MatrixUtils.createRealVector(right);
    RealVector terms = solver.getSolver().solve(seen);
    double misfit = Math.pow(design.operate(terms).subtract(seen).getNorm(), 2);
    RealMatrix information = design.transposeMultiply(design);
    return terms.getEntry(2) > 0
        ? Optional.of(of(terms, information, middle, misfit))
        : Optional.empty();
  }

  /** From y = c + b p + a p² about the middle: p0 = -b/2a, least = c - b²/4a. */
  private static Parabola of(
      RealVector terms, RealMatrix information, double middle, double misfit) {
    RealMatrix covariance = MatrixUtils.inverse(information);
    double b = terms.getEntry(1);
    double a = terms.getEntry(2);
    return new Parabola(
        middle - b / (2 * a),
        error(covariance, 0, -1 / (2 * a), b / (2 * a * a)),
        terms.getEntry(0) - b * b / (4 * a),
        error(covariance, 1, -b / (2 * a), b * b / (4 * a * a)),
        a,
        misfit,
        -Math.log(new LUDecomposition(information).getDeterminant()) / 2);
  }

  /** Of what has such slopes by the terms. */
  private static double error(RealMatrix covariance, double... slopes) {
    RealVector slope = MatrixUtils.createRealVector(slopes);
    return Math.sqrt(slope.dotProduct(covariance.operate(slope)));
  }

  double px2At(double position) {
    return leastPx2 + curvaturePx2 * (position - at) * (position - at);
  }

  /** How much the second moment grows with the position there. */
  double slopeAt(double position) {
    return 2 * curvaturePx2 * (position - at);
  }
}
