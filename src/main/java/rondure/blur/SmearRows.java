package rondure.blur;

import rondure.base.RobustStats;
import rondure.sky.FlowJacobian;

/**
 * The linear equations of {@link SmearSum}, two for each star: its spin-2 parts over their errors
 * from the six numbers of Σ and the lens's radial stretch.
 */
final class SmearRows {
  private final double[][] rows;
  private final double[] target;
  private final double[] round;

  private SmearRows(double[][] rows, double[] target, double[] round) {
    this.rows = rows;
    this.target = target;
    this.round = round;
  }

  static SmearRows of(SmearField field) {
    int count = field.count();
    double[][] rows = new double[2 * count][SmearSum.SIZE + SmearSum.RADIAL_TERMS];
    double[] target = new double[2 * count];
    double[] round = new double[SmearSum.SIZE];
    for (int i = 0; i < count; i++) {
      fill(field, i, rows, target, round);
    }
    return new SmearRows(rows, target, round);
  }

  /** Round part of B Σ Bᵀ by each number of Σ, mean over the stars. */
  double[] round() {
    return round.clone();
  }

  private static void fill(
      SmearField field, int i, double[][] rows, double[] target, double[] round) {
    FlowJacobian b = field.camera.jacobian(field.xs[i], field.ys[i]);
    double f = field.camera.focalLengthPx();
    double[] x = {b.xByX() / f, b.xByY() / f, b.xByZ() / f};
    double[] y = {b.yByX() / f, b.yByY() / f, b.yByZ() / f};
    int at = 0;
    for (int j = 0; j < 3; j++) {
      for (int k = j; k < 3; k++) {
        double twice = j == k ? 1 : 2;
        double xx = twice * x[j] * x[k];
        double yy = twice * y[j] * y[k];
        double xy = twice * (x[j] * y[k] + x[k] * y[j]) / 2;
        rows[2 * i][at] = (xx - yy) / 2 / field.alongError[i];
        rows[2 * i + 1][at] = xy / field.diagonalError[i];
        round[at++] += (xx + yy) / 2 / field.count();
      }
    }
    for (int term = 0; term < SmearSum.RADIAL_TERMS; term++) {
      double[] radial = field.radial(i, 2 + 2 * term);
      rows[2 * i][SmearSum.SIZE + term] = radial[0] / field.alongError[i];
      rows[2 * i + 1][SmearSum.SIZE + term] = radial[1] / field.diagonalError[i];
    }
    target[2 * i] = field.along[i] / field.alongError[i];
    target[2 * i + 1] = field.diagonal[i] / field.diagonalError[i];
  }

  /** How far each star is from the median star, in standard deviations. */
  static double[] fromMedian(SmearField field) {
    double along = RobustStats.median(field.along);
    double diagonal = RobustStats.median(field.diagonal);
    double[] misfits = new double[field.count()];
    for (int i = 0; i < misfits.length; i++) {
      misfits[i] =
          Math.hypot(
              (field.along[i] - along) / field.alongError[i],
              (field.diagonal[i] - diagonal) / field.diagonalError[i]);
    }
    return misfits;
  }

  /** Adds the weighted normal equations. */
  void add(double[] weights, double[][] normal, double[] right) {
    for (int row = 0; row < rows.length; row++) {
      double weight = weights[row / 2];
      for (int j = 0; j < right.length; j++) {
        right[j] += weight * rows[row][j] * target[row];
        for (int k = 0; k < right.length; k++) {
          normal[j][k] += weight * rows[row][j] * rows[row][k];
        }
      }
    }
  }

  /** Length of each star's misfit in standard deviations. */
  double[] misfits(double[] solution) {
    double[] misfits = new double[target.length / 2];
    for (int i = 0; i < misfits.length; i++) {
      misfits[i] =
          Math.hypot(
              target[2 * i] - SmearSum.dot(rows[2 * i], solution),
              target[2 * i + 1] - SmearSum.dot(rows[2 * i + 1], solution));
    }
    return misfits;
  }
}
