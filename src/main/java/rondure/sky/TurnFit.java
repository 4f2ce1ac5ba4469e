package rondure.sky;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import rondure.base.RobustStats;

/**
 * The rotation that carries directions to places on a frame, by weighted least squares of the
 * misfits in px (Gauss-Newton from a first guess, Tukey's biweight against wrong pairs).
 *
 * @param turn from the directions' axes into camera axes
 * @param covariance of a small rotation that follows it, camera axes, rad²
 * @param misfitPx robust scatter of the misfits, per axis
 * @param used pairs with a weight of at least one half
 */
record TurnFit(Rotation turn, double[][] covariance, double misfitPx, int used) {
  private static final int MOST_STEPS = 12;
  private static final double SETTLED_RAD = 1e-9;
  private static final double TUKEY = 4.685;

  /** Pairs to be fitted: a direction and where it was seen. */
  record Pairs(double[][] directions, double[] x, double[] y, double[] errorPx) {
    int count() {
      return x.length;
    }
  }

  /** Empty when fewer than two pairs can be used or they do not fix a rotation. */
  static Optional<TurnFit> of(Camera camera, Pairs pairs, Rotation guess) {
    return new Solver(camera, pairs, guess).solve();
  }

  private static final class Solver {
    private final Camera camera;
    private final Pairs pairs;
    private final double[] offX;
    private final double[] offY;
    private final double[] weight;
    private final double[][] jacobians;
    private Rotation turn;
    private double scale = 1;

    Solver(Camera camera, Pairs pairs, Rotation guess) {
      this.camera = camera;
      this.pairs = pairs;
      this.turn = guess;
      this.offX = new double[pairs.count()];
      this.offY = new double[pairs.count()];
      this.weight = new double[pairs.count()];
      this.jacobians = new double[pairs.count()][6];
    }

    Optional<TurnFit> solve() {
      double step = 1;
      for (int i = 0; i < MOST_STEPS && step > SETTLED_RAD; i++) {
        measure();
        reweigh();
        Optional<double[]> correction = correction();
        if (correction.isEmpty()) {
          return Optional.empty();
        }
        double[] c = correction.get();
        turn = turn.then(Rotation.ofVector(c[0], c[1], c[2]));
        step = Math.sqrt(c[0] * c[0] + c[1] * c[1] + c[2] * c[2]);
      }
      measure();
      reweigh();
      return finish();
    }

    private void measure() {
      for (int i = 0; i < pairs.count(); i++) {
        double[] d = pairs.directions()[i];
        Optional<ImagePoint> at = camera.project(turn.apply(Direction.of(d[0], d[1], d[2])));
        if (at.isEmpty() || !camera.sees(at.get().xPx(), at.get().yPx())) {
          offX[i] = Double.NaN;
          offY[i] = Double.NaN;
          continue;
        }
        offX[i] = pairs.x()[i] - at.get().xPx();
        offY[i] = pairs.y()[i] - at.get().yPx();
        FlowJacobian b = camera.jacobian(at.get().xPx(), at.get().yPx());
        jacobians[i] = new double[] {b.xByX(), b.xByY(), b.xByZ(), b.yByX(), b.yByY(), b.yByZ()};
      }
    }

    /** Weights from misfits over stated errors; their scale is the misfits' own, at least 1. */
    private void reweigh() {
      double[] ratio = new double[pairs.count()];
      for (int i = 0; i < ratio.length; i++) {
        ratio[i] = Math.hypot(offX[i], offY[i]) / pairs.errorPx()[i];
      }
      // The median of a two-dimensional Gaussian's distance is 1.1774 sigma.
      double middle = RobustStats.median(ratio) / 1.1774;
      scale = Double.isNaN(middle) ? 1 : Math.max(1, middle);
      for (int i = 0; i < ratio.length; i++) {
        double share = ratio[i] / (TUKEY * scale);
        double tukey = share < 1 ? Math.pow(1 - share * share, 2) : 0;
        weight[i] = tukey / (pairs.errorPx()[i] * pairs.errorPx()[i]);
      }
    }

    private double[][] normal() {
      double[][] normal = new double[3][3];
      for (int i = 0; i < pairs.count(); i++) {
        if (!(weight[i] > 0)) {
          continue;
        }
        double[] b = jacobians[i];
        for (int row = 0; row < 3; row++) {
          for (int column = 0; column < 3; column++) {
            normal[row][column] += weight[i] * (b[row] * b[column] + b[3 + row] * b[3 + column]);
          }
        }
      }
      return normal;
    }

    private Optional<double[]> correction() {
      double[] right = new double[3];
      for (int i = 0; i < pairs.count(); i++) {
        if (weight[i] > 0) {
          double[] b = jacobians[i];
          for (int row = 0; row < 3; row++) {
            right[row] += weight[i] * (b[row] * offX[i] + b[3 + row] * offY[i]);
          }
        }
      }
      var lu = new LUDecomposition(new Array2DRowRealMatrix(normal(), false));
      if (!lu.getSolver().isNonSingular()) {
        return Optional.empty();
      }
      double[] step = lu.getSolver().solve(new ArrayRealVector(right, false)).toArray();
      return Arrays.stream(step).allMatch(Double::isFinite) ? Optional.of(step) : Optional.empty();
    }

    private Optional<TurnFit> finish() {
      int used = 0;
      double[] misfits = new double[2 * pairs.count()];
      Arrays.fill(misfits, Double.NaN);
      for (int i = 0; i < pairs.count(); i++) {
        if (weight[i] * pairs.errorPx()[i] * pairs.errorPx()[i] >= 0.5) {
          used++;
        }
        misfits[2 * i] = Math.abs(offX[i]);
        misfits[2 * i + 1] = Math.abs(offY[i]);
      }
      var lu = new LUDecomposition(new Array2DRowRealMatrix(normal(), false));
      if (used < 2 || !lu.getSolver().isNonSingular()) {
        return Optional.empty();
      }
      double[][] inverse = lu.getSolver().getInverse().getData();
      double freedom = Math.max(0.25, 1 - 1.5 / used);
      for (double[] row : inverse) {
        for (int column = 0; column < 3; column++) {
          row[column] *= scale * scale / freedom;
        }
      }
      double misfit = RobustStats.SIGMA_PER_MAD * RobustStats.median(misfits);
      return Optional.of(new TurnFit(turn, inverse, misfit, used));
    }
  }
}
