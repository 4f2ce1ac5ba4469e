package rondure.sky;

import java.util.Arrays;
import java.util.List;

/**
 * Attitudes of frames under a turning sky and a creeping camera, exp(creep τ) A exp(sky τ), and
 * what they leave of the seen ones.
 */
final class CreepModel {
  final List<Pose> poses;
  private final Vec noise;
  private final Pose middle;

  /**
   * The two spins, and what the middle frame's attitude is off.
   *
   * @param sky spin of the sky in its own axes, rad/s
   * @param creep of the camera about its own axes, rad/s
   * @param offset of the camera at the middle frame, rad
   */
  record Motion(Vec sky, Vec creep, Vec offset) {}

  /**
   * @param poses of one aim, without jumps
   * @param noise about the camera's axes, rad
   */
  CreepModel(List<Pose> poses, Vec noise) {
    this.poses = poses;
    this.noise = noise;
    this.middle = poses.get(poses.size() / 2);
  }

  /** Three numbers for each frame, in units of the noise. */
  double[] residuals(Motion motion) {
    double[] all = new double[3 * poses.size()];
    for (int i = 0; i < poses.size(); i++) {
      Vec left = left(poses.get(i), motion);
      for (int k = 0; k < 3; k++) {
        all[3 * i + k] = left.at(k) / noise.at(k);
      }
    }
    return all;
  }

  double chi2(Motion motion) {
    return Arrays.stream(residuals(motion)).map(r -> r * r).sum();
  }

  /** The best single steady spin of any rate, from a first one. */
  Motion steady(Vec sky, int rounds) {
    Motion motion = new Motion(sky, Vec.ZERO, Vec.ZERO);
    for (int round = 0; round < rounds; round++) {
      motion = nearer(motion);
    }
    return motion;
  }

  /** A straight line through what a steady spin leaves mends the spin. */
  private Motion nearer(Motion steady) {
    double times = 0;
    double squares = 0;
    Vec sum = Vec.ZERO;
    Vec cross = Vec.ZERO;
    for (Pose pose : poses) {
      double t = pose.seconds() - middle.seconds();
      Vec left = left(pose, steady);
      times += t;
      squares += t * t;
      sum = sum.plus(left);
      cross = cross.plus(left.times(t));
    }
    double n = poses.size();
    double spread = squares - times * times / n;
    Vec slope = cross.minus(sum.times(times / n)).times(1 / spread);
    return new Motion(
        steady.sky().plus(slope.turned(middle.turn().inverse())),
        Vec.ZERO,
        steady.offset().plus(sum.minus(slope.times(times)).times(1 / n)));
  }

  private Vec left(Pose pose, Motion motion) {
    double t = pose.seconds() - middle.seconds();
    Rotation model =
        motion
            .sky()
            .times(t)
            .exp()
            .then(middle.turn())
            .then(motion.offset().exp())
            .then(motion.creep().times(t).exp());
    return Vec.log(model.inverse().then(pose.turn()));
  }
}
