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
   * A creep about any axis is hardly ever more than so many times what it adds to the rate (one in
   * ten): a path that merely bends, at the sidereal rate, is a tripod that settles or swings.
   */
  private static final double MOST_OVER_RATE = 10;

  /** One that is that of a head that sags may be more: it shows by its axis besides. */
  private static final double MOST_OVER_RATE_IF_SAGGING = 30;

  /**
   * Or any, where the bend is so plain that a settling which leaves no more than noise would have
   * to last ten times as long as the frames.
   */
  private static final double PLAIN_GAIN = 1e5;

  /** A head that sags goes on evenly: one that settles leaves more than the noise. */
  private static final double LARGEST_MISFIT_IF_SAGGING = 1.5;

  /** Air, lens and pixels bend a path by a part of this. */
  private static final double LEAST_BEND_PX = 0.03;

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
   * @param sight what they were seen with
   */
  static Optional<CreepFit> of(List<Pose> poses, Vec noise, Vec guess, Sight sight) {
    if (poses.size() < LEAST_FRAMES) {
      return Optional.empty();
    }
    int step = 1 + (poses.size() - 1) / MOST_FRAMES;
    List<Pose> some =
        java.util.stream.IntStream.range(0, poses.size())
            .filter(i -> i % step == 0)
            .mapToObj(poses::get)
            .toList();
    return new Fit(new CreepModel(some, noise), guess).solve(sight);
  }

  private static final class Fit {
    private final CreepModel model;
    private CreepModel.Motion motion;
    private final double steadyChi2;
    private final double steadyRate;

    Fit(CreepModel model, Vec guess) {
      this.model = model;
      motion = new CreepModel.Motion(guess.withLength(OMEGA), Vec.ZERO, Vec.ZERO);
      CreepModel.Motion steady = model.steady(motion.sky(), STEPS);
      steadyChi2 = model.chi2(steady);
      steadyRate = steady.sky().length();
    }

    Optional<CreepFit> solve(Sight sight) {
      RealMatrix covariance = null;
      for (int i = 0; i < STEPS; i++) {
        RealMatrix jacobian = jacobian();
        RealMatrix normal = jacobian.transpose().multiply(jacobian);
        var lu = new LUDecomposition(normal, 0);
        if (!lu.getSolver().isNonSingular()) {
          return Optional.empty();
        }
        covariance = lu.getSolver().getInverse();
        double[] pull = jacobian.transpose().operate(model.residuals(motion));
        apply(covariance.operate(pull));
        if (!(motion.sky().length() > 0) || !Double.isFinite(motion.creep().length())) {
          return Optional.empty();
        }
      }
      return judged(covariance, sight);
    }

    private Optional<CreepFit> judged(RealMatrix covariance, Sight sight) {
      double chi2 = model.chi2(motion);
      double freedom = 3.0 * model.poses.size() - TERMS;
      double scale = Math.max(1, chi2 / freedom);
      double poleVariance = covariance.getEntry(0, 0) + covariance.getEntry(1, 1);
      double creepVariance = 0;
      for (int k = 0; k < 3; k++) {
        creepVariance += covariance.getEntry(SKY_TERMS + k, SKY_TERMS + k);
      }
      double creep = motion.creep().length();
      double gain = (steadyChi2 - chi2) / scale;
      boolean seen =
          gain > LEAST_GAIN
              && scale < LARGEST_MISFIT
              && creep > LEAST_SIGMAS * Math.sqrt(scale * creepVariance)
              && creep < 2 * OMEGA;
      double rollError = Math.sqrt(scale * covariance.getEntry(SKY_TERMS + 2, SKY_TERMS + 2));
      boolean sags =
          HeadSag.fits(motion.creep(), rollError, sight.held())
              && scale < LARGEST_MISFIT_IF_SAGGING
              && (gain > PLAIN_GAIN
                  || creep < MOST_OVER_RATE_IF_SAGGING * Math.abs(steadyRate - OMEGA))
              && bendRad() * sight.camera().focalLengthPx() > LEAST_BEND_PX;
      return seen && (sags || showsInTheRate(sight))
          ? Optional.of(new CreepFit(motion.sky(), motion.creep(), Math.sqrt(scale * poleVariance)))
          : Optional.empty();
    }

    private boolean showsInTheRate(Sight sight) {
      double creep = motion.creep().length();
      double least = Math.max(CreepProof.LEAST_SHARE, sight.trust().scaleError()) * OMEGA;
      return creep > least && creep < MOST_OVER_RATE * Math.abs(steadyRate - OMEGA);
    }

    /** How far the path's middle is off the line between its ends. */
    private double bendRad() {
      double seconds =
          model.poses.get(model.poses.size() - 1).seconds() - model.poses.get(0).seconds();
      Vec sky = motion.sky().turned(model.poses.get(model.poses.size() / 2).turn());
      return motion.creep().cross(sky).length() * seconds * seconds / 8;
    }

    private RealMatrix jacobian() {
      double[] now = model.residuals(motion);
      RealMatrix jacobian = new Array2DRowRealMatrix(now.length, TERMS);
      for (int term = 0; term < TERMS; term++) {
        double step = term < SKY_TERMS + 3 ? 1e-4 * OMEGA : 1e-7;
        double[] steps = new double[TERMS];
        steps[term] = step;
        double[] moved = model.residuals(moved(steps));
        for (int i = 0; i < now.length; i++) {
          jacobian.setEntry(i, term, (now[i] - moved[i]) / step);
        }
      }
      return jacobian;
    }

    private void apply(double[] steps) {
      motion = moved(steps);
    }

    /** Two steps across the sky's spin, three of the creep, three of the offset. */
    private CreepModel.Motion moved(double[] steps) {
      Vec[] across = motion.sky().across();
      Vec sky = motion.sky().plus(across[0].times(steps[0])).plus(across[1].times(steps[1]));
      return new CreepModel.Motion(
          sky.withLength(OMEGA),
          motion.creep().plus(new Vec(steps[2], steps[3], steps[4])),
          motion.offset().plus(new Vec(steps[5], steps[6], steps[7])));
    }
  }
}
