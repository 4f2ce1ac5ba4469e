package rondure.night;

import java.util.Optional;
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
 */
record Parabola(
    double at,
    double atError,
    double leastPx2,
    double leastErrorPx2,
    double curvaturePx2,
    double misfit) {

  /**
   * Weighted least squares; empty when fewer than three positions differ or there is no minimum.
   *
   * @param positions of the focus, any unit
   * @param px2 second moments there
   * @param sigma standard errors of these, > 0
   */
  static Optional<Parabola> fit(double[] positions, double[] px2, double[] sigma) {
    double middle = java.util.Arrays.stream(positions).average().orElse(0);
    double[][] rows = new double[positions.length][];
    double[] right = new double[positions.length];
    for (int i = 0; i < rows.length; i++) {
      double p = positions[i] - middle;
      rows[i] = new double[] {1 / sigma[i], p / sigma[i], p * p / sigma[i]};
      right[i] = px2[i] / sigma[i];
    }
    if (rows.length < 3) {
      return Optional.empty();
    }
    RealMatrix design = MatrixUtils.createRealMatrix(rows);
    QRDecomposition solver = new QRDecomposition(design, 1e-10);
    if (!solver.getSolver().isNonSingular()) {
      return Optional.empty();
    }
    RealVector terms = solver.getSolver().solve(MatrixUtils.createRealVector(right));
    double misfit =
        Math.pow(design.operate(terms).subtract(MatrixUtils.createRealVector(right)).getNorm(), 2);
    RealMatrix covariance = MatrixUtils.inverse(design.transposeMultiply(design));
    return terms.getEntry(2) > 0
        ? Optional.of(of(terms, covariance, middle, misfit))
        : Optional.empty();
  }

  /** From y = c + b p + a p² about the middle: p0 = -b/2a, least = c - b²/4a. */
  private static Parabola of(
      RealVector terms, RealMatrix covariance, double middle, double misfit) {
    double b = terms.getEntry(1);
    double a = terms.getEntry(2);
    RealVector place =
        MatrixUtils.createRealVector(new double[] {0, -1 / (2 * a), b / (2 * a * a)});
    RealVector least =
        MatrixUtils.createRealVector(new double[] {1, -b / (2 * a), b * b / (4 * a * a)});
    return new Parabola(
        middle - b / (2 * a),
        Math.sqrt(place.dotProduct(covariance.operate(place))),
        terms.getEntry(0) - b * b / (4 * a),
        Math.sqrt(least.dotProduct(covariance.operate(least))),
        a,
        misfit);
  }

  double px2At(double position) {
    return leastPx2 + curvaturePx2 * (position - at) * (position - at);
  }

  /** The same with its errors grown by a factor, and something added to that of the place. */
  Parabola withErrors(double factor, double added) {
    return new Parabola(
        at,
        Math.hypot(factor * atError, added),
        leastPx2,
        factor * leastErrorPx2,
        curvaturePx2,
        misfit);
  }
}
