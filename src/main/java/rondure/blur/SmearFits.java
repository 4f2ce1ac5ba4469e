package rondure.blur;

import java.util.Arrays;
import rondure.base.RobustStats;

/** Least-squares fits of direction patterns; pure functions of a {@link SmearField}. */
final class SmearFits {
  private static final double HUBER = 1.345;
  private static final int ROUNDS = 6;
  private static final int RADIAL_TERMS = 2;
  private static final double WEAK_PRECISION = 1e-4;

  private SmearFits() {}

  /** The lens alone: radial or tangential stretch growing as r² and r⁴. */
  static SmearModel lensOnly(SmearField field) {
    return solve(field, 0, (x, y) -> new double[2]);
  }

  /**
   * The lens and a turn of the camera about an axis in the image plane: the same smear everywhere
   * on a long lens, stretched to the corners on a wide one (M = (f/p)² B S Bᵀ, B the image flow of
   * a rotation).
   */
  static SmearModel shake(SmearField field) {
    return solve(field, 2, (x, y) -> new double[2]);
  }

  /** The lens beside a smear that is known. */
  static SmearModel known(SmearField field, SmearModel.SmearAt smear) {
    return solve(field, 0, smear);
  }

  private static SmearModel solve(SmearField field, int turns, SmearModel.SmearAt given) {
    int count = field.count();
    int terms = turns + RADIAL_TERMS;
    double[][] rows = new double[2 * count][terms];
    double[] target = new double[2 * count];
    for (int i = 0; i < count; i++) {
      fillRows(field, i, turns, given, rows, target);
    }
    double[] weights = new double[2 * count];
    Arrays.fill(weights, 1);
    double[] solution = new double[terms];
    for (int round = 0; round < ROUNDS; round++) {
      solution = weighted(rows, target, weights);
      for (int row = 0; row < rows.length; row++) {
        double misfit = Math.abs(target[row] - dot(rows[row], solution));
        weights[row] = misfit <= HUBER ? 1 : HUBER / misfit;
      }
    }
    return model(field, turns, given, rows, target, solution);
  }

  private static void fillRows(
      SmearField field,
      int i,
      int turns,
      SmearModel.SmearAt given,
      double[][] rows,
      double[] target) {
    double[] known = given.spin2(field.xs[i], field.ys[i]);
    for (int part = 0; part < 2; part++) {
      int row = 2 * i + part;
      double error = part == 0 ? field.alongError[i] : field.diagonalError[i];
      double seen = part == 0 ? field.along[i] : field.diagonal[i];
      target[row] = (seen - known[part]) / error;
      for (int turn = 0; turn < turns; turn++) {
        rows[row][turn] = turned(field, turn, field.xs[i], field.ys[i])[part] / error;
      }
      rows[row][turns] = field.radial(i, 2)[part] / error;
      rows[row][turns + 1] = field.radial(i, 4)[part] / error;
    }
  }

  /**
   * Spin-2 at a pixel of a trace-free covariance of camera turns: kind 0 = more about y than x
   * (stretch along x), kind 1 = about a diagonal.
   */
  static double[] turned(SmearField field, int kind, double xPx, double yPx) {
    double x = (xPx - field.camera.centreXPx()) / field.camera.focalLengthPx();
    double y = (yPx - field.camera.centreYPx()) / field.camera.focalLengthPx();
    // Rows of B for turns about x and y: dx = (-xy, 1 + x²), dy = (-(1 + y²), xy).
    double ax = -x * y;
    double bx = 1 + x * x;
    double ay = -(1 + y * y);
    double by = x * y;
    double xx = kind == 0 ? bx * bx - ax * ax : -2 * ax * bx;
    double yy = kind == 0 ? by * by - ay * ay : -2 * ay * by;
    double xy = kind == 0 ? bx * by - ax * ay : -(ax * by + bx * ay);
    return new double[] {(xx - yy) / 2, xy};
  }

  private static SmearModel model(
      SmearField field,
      int turns,
      SmearModel.SmearAt given,
      double[][] rows,
      double[] target,
      double[] solution) {
    double loss = 0;
    double[] lengths = new double[field.count()];
    double[] lens = new double[field.count()];
    SmearModel.SmearAt at =
        (x, y) -> {
          double[] sum = given.spin2(x, y).clone();
          for (int turn = 0; turn < turns; turn++) {
            double[] basis = turned(field, turn, x, y);
            sum[0] += solution[turn] * basis[0];
            sum[1] += solution[turn] * basis[1];
          }
          return sum;
        };
    for (int i = 0; i < field.count(); i++) {
      double along = target[2 * i] - dot(rows[2 * i], solution);
      double diagonal = target[2 * i + 1] - dot(rows[2 * i + 1], solution);
      loss += Math.min(SmearModel.MOST_LOSS_PER_STAR, along * along + diagonal * diagonal);
      lengths[i] = at.lengthPx2(field.xs[i], field.ys[i]);
      double square = field.radiusShare(i) * field.radiusShare(i);
      lens[i] = Math.abs(square * (solution[turns] + square * solution[turns + 1]));
    }
    double radial = solution[turns] + solution[turns + 1];
    return new SmearModel(loss, RobustStats.median(lengths), radial, RobustStats.median(lens), at);
  }

  /** Normal equations; a weak pull to zero (a prior of 100 px²) keeps few stars solvable. */
  private static double[] weighted(double[][] rows, double[] target, double[] weights) {
    int terms = rows[0].length;
    double[][] normal = new double[terms][terms];
    double[] right = new double[terms];
    for (int term = 0; term < terms; term++) {
      normal[term][term] = WEAK_PRECISION;
    }
    for (int row = 0; row < rows.length; row++) {
      for (int term = 0; term < terms; term++) {
        double weighted = weights[row] * rows[row][term];
        right[term] += weighted * target[row];
        for (int other = 0; other <= term; other++) {
          normal[term][other] += weighted * rows[row][other];
        }
      }
    }
    for (int term = 0; term < terms; term++) {
      for (int other = 0; other < term; other++) {
        normal[other][term] = normal[term][other];
      }
    }
    return new SymmetricSolve(normal, 0).solve(right);
  }

  private static double dot(double[] one, double[] two) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * two[i];
    }
    return sum;
  }
}
