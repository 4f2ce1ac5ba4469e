package rondure.sky;

import java.util.Arrays;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.base.RobustWeights;

/**
 * The rotation that carries directions to places on a frame, by weighted least squares of the
 * misfits in px (Gauss-Newton from a first guess, Tukey's biweight against wrong pairs). Errors of
 * places are even over a frame, not over the sphere: this is what {@link Kabsch} would give if they
 * were, at a fraction of the time when the guess is good.
 *
 * @param turn from the directions' axes into camera axes
 * @param errors standard errors of a small rotation about the camera's axes, rad
 * @param misfitPx robust scatter of the misfits, per axis
 * @param used pairs with a weight of at least one half
 */
record TurnFit(Rotation turn, Vec errors, double misfitPx, int used) {
  private static final int MOST_STEPS = 12;
  private static final double SETTLED_RAD = 1e-9;
  private static final double LEAST_SCALE = 0.1;
  private static final double STATED_COUNT_AS = 12;

  /** Median length of a two-dimensional Gaussian misfit over its standard deviation per axis. */
  private static final double MEDIAN_PER_SIGMA = Math.sqrt(2 * Math.log(2));

  /** Pairs to be fitted: a direction and where it was seen. */
  static final class Pairs {
    private final Direction[] directions;
    private final double[] x;
    private final double[] y;
    private final double[] errorPx;
    private int count;

    Pairs(int most) {
      directions = new Direction[most];
      x = new double[most];
      y = new double[most];
      errorPx = new double[most];
    }

    void add(Direction direction, double xPx, double yPx, double error) {
      directions[count] = direction;
      x[count] = xPx;
      y[count] = yPx;
      errorPx[count++] = error;
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
    private final FlowJacobian[] flows;
    private Rotation turn;
    private double scale = 1;
    private double ownScale = 1;

    Solver(Camera camera, Pairs pairs, Rotation guess) {
      this.camera = camera;
      this.pairs = pairs;
      this.turn = guess;
      this.offX = new double[pairs.count];
      this.offY = new double[pairs.count];
      this.weight = new double[pairs.count];
      this.flows = new FlowJacobian[pairs.count];
    }

    Optional<TurnFit> solve() {
      double step = 1;
      for (int i = 0; i < MOST_STEPS && step > SETTLED_RAD; i++) {
        measure();
        reweigh();
        Information normal = normal();
        if (!normal.isRegular()) {
          return Optional.empty();
        }
        Vec move = normal.inverse().times(pull());
        turn = turn.then(move.exp());
        step = move.length();
      }
      measure();
      reweigh();
      return finish();
    }

    private void measure() {
      for (int i = 0; i < pairs.count; i++) {
        Direction seen = turn.apply(pairs.directions[i]);
        Optional<ImagePoint> at = camera.project(seen);
        if (at.isEmpty()) {
          offX[i] = Double.NaN;
          offY[i] = Double.NaN;
          continue;
        }
        offX[i] = pairs.x[i] - at.get().xPx();
        offY[i] = pairs.y[i] - at.get().yPx();
        flows[i] = camera.jacobian(seen);
      }
    }

    /** Weights from misfits over stated errors; their scale is the misfits' own, at least 1. */
    private void reweigh() {
      double[] ratio = new double[pairs.count];
      for (int i = 0; i < ratio.length; i++) {
        ratio[i] = Math.sqrt(offX[i] * offX[i] + offY[i] * offY[i]) / pairs.errorPx[i];
      }
      double middle = RobustStats.median(ratio) / MEDIAN_PER_SIGMA;
      scale = Double.isNaN(middle) ? 1 : Math.max(1, middle);
      ownScale = Double.isNaN(middle) ? 1 : Math.max(LEAST_SCALE, middle);
      for (int i = 0; i < ratio.length; i++) {
        double tukey = Double.isNaN(ratio[i]) ? 0 : RobustWeights.tukey(ratio[i] / scale);
        weight[i] = tukey / (pairs.errorPx[i] * pairs.errorPx[i]);
      }
    }

    private Information normal() {
      double[] sum = new double[6];
      for (int i = 0; i < pairs.count; i++) {
        if (weight[i] > 0) {
          Information.add(sum, flows[i], weight[i]);
        }
      }
      return Information.of(sum);
    }

    private Vec pull() {
      Vec sum = Vec.ZERO;
      for (int i = 0; i < pairs.count; i++) {
        if (weight[i] > 0) {
          sum = sum.plus(flows[i].pull(weight[i] * offX[i], weight[i] * offY[i]));
        }
      }
      return sum;
    }

    /** Misfits over stated errors, which few pairs tell badly: those count as much as a dozen. */
    private double ownScale(int used) {
      double squares = used * ownScale * ownScale + STATED_COUNT_AS * scale * scale;
      return Math.sqrt(squares / (used + STATED_COUNT_AS));
    }

    private Optional<TurnFit> finish() {
      int used = 0;
      double[] misfits = new double[2 * pairs.count];
      Arrays.fill(misfits, Double.NaN);
      for (int i = 0; i < pairs.count; i++) {
        used += weight[i] * pairs.errorPx[i] * pairs.errorPx[i] >= 0.5 ? 1 : 0;
        misfits[2 * i] = Math.abs(offX[i]);
        misfits[2 * i + 1] = Math.abs(offY[i]);
      }
      Information normal = normal();
      if (used < 2 || !normal.isRegular()) {
        return Optional.empty();
      }
      // Three parameters were taken from two numbers a pair.
      double growth = ownScale(used) / Math.sqrt(Math.max(0.25, 1 - 1.5 / used));
      RotationCovariance c = normal.inverse();
      Vec errors =
          new Vec(Math.sqrt(c.xxRad2()), Math.sqrt(c.yyRad2()), Math.sqrt(c.zzRad2()))
              .times(growth);
      double misfit = RobustStats.SIGMA_PER_MAD * RobustStats.median(misfits);
      return Optional.of(new TurnFit(turn, errors, misfit, used));
    }
  }
}
