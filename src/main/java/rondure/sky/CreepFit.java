package rondure.sky;

import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * A camera that creeps steadily under the turning sky: attitude = exp(creep τ) A exp(sky τ). The
 * sky's axis then wanders through the camera's axes, which tells the two apart when the frames span
 * long enough; over short spans only the sum of both is known.
 *
 * @param sky spin of the sky in its own axes, of sidereal rate, rad/s
 * @param creep of the camera about its own axes, rad/s
 * @param poleErrorRadPerS standard error of the sky spin's direction, times its rate
 */
record CreepFit(Vec sky, Vec creep, double poleErrorRadPerS) {
  private static final int LEAST_FRAMES = 6;
  private static final int MOST_FRAMES = 120;
  private static final int STEPS = 25;
  private static final double LEAST_GAIN = 60;
  private static final double LARGEST_MISFIT = 4;
  private static final double LEAST_SIGMAS = 4;

  /**
   * A creep in any direction is hardly ever more than so many times what it adds to the rate (one
   * in ten): a path that merely bends, at the sidereal rate, is a tripod that settles or swings.
   */
  private static final double MOST_OVER_RATE = 10;

  private static final double OMEGA = SkyMotion.SIDEREAL_RATE_RAD_PER_S;

  private static final int SKY_TERMS = 2;
  private static final int TERMS = 8;

  /**
   * Empty when a single steady spin, of whatever rate, does as well, or when the two motions cannot
   * be told apart.
   *
   * @param poses of one aim, without jumps
   * @param noise about the camera's axes, rad
   * @param guess of the sky's spin in its own axes
   * @param leastCreep creeps below this are not told from an imperfect camera model, rad/s
   */
  static Optional<CreepFit> of(List<Pose> poses, Vec noise, Vec guess, double leastCreep) {
    if (poses.size() < LEAST_FRAMES) {
      return Optional.empty();
    }
    int step = 1 + (poses.size() - 1) / MOST_FRAMES;
    List<Pose> some =
        java.util.stream.IntStream.range(0, poses.size())
            .filter(i -> i % step == 0)
            .mapToObj(poses::get)
            .toList();
    return new Fit(some, noise, guess).solve(leastCreep);
  }

  private static final class Fit {
    private final List<Pose> poses;
    private final Vec noise;
    private final Pose middle;
    private Vec sky;
    private Vec creep = Vec.ZERO;
    private Vec offset = Vec.ZERO;
    private double steadyRate;

    Fit(List<Pose> poses, Vec noise, Vec guess) {
      this.poses = poses;
      this.noise = noise;
      this.middle = poses.get(poses.size() / 2);
      this.sky = guess.withLength(OMEGA);
    }

    Optional<CreepFit> solve(double leastCreep) {
      double steady = steadyChi2();
      RealMatrix covariance = null;
      for (int i = 0; i < STEPS; i++) {
        RealMatrix jacobian = jacobian();
        RealMatrix normal = jacobian.transpose().multiply(jacobian);
        var lu = new LUDecomposition(normal, 0);
        if (!lu.getSolver().isNonSingular()) {
          return Optional.empty();
        }
        covariance = lu.getSolver().getInverse();
        double[] pull = jacobian.transpose().operate(residuals(sky, creep, offset));
        double[] move = covariance.operate(pull);
        apply(move);
        if (!(sky.length() > 0) || !Double.isFinite(creep.length())) {
          return Optional.empty();
        }
      }
      return judged(steady, covariance, leastCreep);
    }

    private Optional<CreepFit> judged(double steady, RealMatrix covariance, double leastCreep) {
      double chi2 = chi2(residuals(sky, creep, offset));
      double freedom = 3.0 * poses.size() - TERMS;
      double scale = Math.max(1, chi2 / freedom);
      double poleVariance = covariance.getEntry(0, 0) + covariance.getEntry(1, 1);
      double creepVariance = 0;
      for (int k = 0; k < 3; k++) {
        creepVariance += covariance.getEntry(SKY_TERMS + k, SKY_TERMS + k);
      }
      double creepError = Math.sqrt(scale * creepVariance);
      boolean proven =
          (steady - chi2) / scale > LEAST_GAIN
              && scale < LARGEST_MISFIT
              && creep.length() > Math.max(leastCreep, LEAST_SIGMAS * creepError)
              && creep.length() < 2 * OMEGA
              && creep.length() < MOST_OVER_RATE * Math.abs(steadyRate - OMEGA);
      return proven
          ? Optional.of(new CreepFit(sky, creep, Math.sqrt(scale * poleVariance)))
          : Optional.empty();
    }

    /** Misfit of one steady spin of any rate: the spin is the sky's, the rate free. */
    private double steadyChi2() {
      Vec spin = sky;
      Vec off = Vec.ZERO;
      for (int round = 0; round < STEPS; round++) {
        double times = 0;
        double squares = 0;
        Vec sum = Vec.ZERO;
        Vec cross = Vec.ZERO;
        for (Pose pose : poses) {
          double t = pose.seconds() - middle.seconds();
          Vec left = left(pose, spin, Vec.ZERO, off);
          times += t;
          squares += t * t;
          sum = sum.plus(left);
          cross = cross.plus(left.times(t));
        }
        double n = poses.size();
        double spread = squares - times * times / n;
        Vec slope = cross.minus(sum.times(times / n)).times(1 / spread);
        off = off.plus(sum.minus(slope.times(times)).times(1 / n));
        spin = spin.plus(slope.turned(middle.turn().inverse()));
      }
      steadyRate = spin.length();
      return chi2(residuals(spin, Vec.ZERO, off));
    }

    private Vec left(Pose pose, Vec spin, Vec drift, Vec off) {
      double t = pose.seconds() - middle.seconds();
      Rotation model =
          spin.times(t).exp().then(middle.turn()).then(off.exp()).then(drift.times(t).exp());
      return Vec.log(model.inverse().then(pose.turn()));
    }

    private double[] residuals(Vec spin, Vec drift, Vec off) {
      double[] all = new double[3 * poses.size()];
      for (int i = 0; i < poses.size(); i++) {
        Vec left = left(poses.get(i), spin, drift, off);
        for (int k = 0; k < 3; k++) {
          all[3 * i + k] = left.at(k) / noise.at(k);
        }
      }
      return all;
    }

    private static double chi2(double[] residuals) {
      return java.util.Arrays.stream(residuals).map(r -> r * r).sum();
    }

    private RealMatrix jacobian() {
      double[] now = residuals(sky, creep, offset);
      RealMatrix jacobian = new Array2DRowRealMatrix(now.length, TERMS);
      Vec[] across = sky.across();
      for (int term = 0; term < TERMS; term++) {
        double step = term < SKY_TERMS + 3 ? 1e-4 * OMEGA : 1e-7;
        double[] moved =
            term < SKY_TERMS
                ? residuals(sky.plus(across[term].times(step)).withLength(OMEGA), creep, offset)
                : term < SKY_TERMS + 3
                    ? residuals(sky, creep.plus(axis(term - SKY_TERMS).times(step)), offset)
                    : residuals(sky, creep, offset.plus(axis(term - SKY_TERMS - 3).times(step)));
        for (int i = 0; i < now.length; i++) {
          jacobian.setEntry(i, term, (now[i] - moved[i]) / step);
        }
      }
      return jacobian;
    }

    private static Vec axis(int k) {
      return new Vec(k == 0 ? 1 : 0, k == 1 ? 1 : 0, k == 2 ? 1 : 0);
    }

    private void apply(double[] move) {
      Vec[] across = sky.across();
      sky = sky.plus(across[0].times(move[0])).plus(across[1].times(move[1])).withLength(OMEGA);
      creep = creep.plus(new Vec(move[2], move[3], move[4]));
      offset = offset.plus(new Vec(move[5], move[6], move[7]));
    }
  }
}
