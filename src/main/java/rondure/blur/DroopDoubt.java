package rondure.blur;

import java.util.List;
import rondure.sky.FrameSky;
import rondure.sky.SkyMotion;
import rondure.sky.Spin;

/**
 * Whose the stars' motion is where a few frames turn faster or slower than the sky can: the camera
 * turns as well, all the time alike, and only the sum is known.
 *
 * <p>The sky's part has the sidereal rate; where its pole is, nothing tells. A head gives way to
 * its load: about the axis to the right (it nods) or the optical axis (it rolls) more likely than
 * another way, and by any amount. Poles count even over the sphere, each by how likely the creep is
 * that it leaves.
 */
final class DroopDoubt {
  private static final int POLES = 20_000;

  /** In a longer scene the pole wanders through the camera, which tells it from the creep. */
  private static final int MOST_FRAMES = 5;

  /** Slower creeps leave the pole as good as known, share of the sky's rate. */
  private static final double LEAST_CREEP = 0.08;

  private static final double SAME = 0.05;

  /** Heads that nod or roll, beside those that turn any way. */
  private static final double BY_LOAD = 0.5;

  /** How nearly they do, rad. */
  private static final double LOAD_SPREAD = 0.15;

  private DroopDoubt() {}

  /**
   * Probability that the sky has more of the stars' motion at the centre than the camera.
   *
   * @param frames of the whole scene
   */
  static double skyProbability(List<FrameSky> frames) {
    double rate = SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    List<FrameSky> told = frames.stream().filter(f -> f.starSpin().isPresent()).toList();
    boolean few = !told.isEmpty() && told.size() <= MOST_FRAMES;
    if (!few || told.stream().anyMatch(f -> f.creep().rateRadPerS() < LEAST_CREEP * rate)) {
      return 1;
    }
    Spin creep = told.get(0).creep();
    boolean alike = told.stream().allMatch(f -> f.creep().minus(creep).rateRadPerS() < SAME * rate);
    return alike ? skyProbability(told.get(0).starSpin().orElseThrow().times(1 / rate)) : 1;
  }

  /**
   * @param sum of both spins over the sidereal rate
   */
  static double skyProbability(Spin sum) {
    double sky = 0;
    double all = 0;
    double moved = across(sum.xRadPerS(), sum.yRadPerS());
    for (int i = 0; i < POLES; i++) {
      double z = 2 * (i + 0.5) / POLES - 1;
      double turn = i * Math.PI * (3 - Math.sqrt(5));
      double x = Math.sqrt(1 - z * z) * Math.cos(turn);
      double y = Math.sqrt(1 - z * z) * Math.sin(turn);
      double weight = density(sum.xRadPerS() - x, sum.yRadPerS() - y, sum.zRadPerS() - z);
      all += weight;
      sky += across(x, y) > moved / 2 ? weight : 0;
    }
    return sky / all;
  }

  private static double across(double x, double y) {
    return x * x + y * y;
  }

  /** Of a creep: even in the logarithm of its rate, about axes that give way or any. */
  private static double density(double x, double y, double z) {
    double rate = Math.max(LEAST_CREEP / 2, Math.sqrt(x * x + y * y + z * z));
    double any = 1 / (4 * Math.PI);
    double nods = about(Math.hypot(y, z) / rate);
    double rolls = about(Math.hypot(x, y) / rate);
    return ((1 - BY_LOAD) * any + BY_LOAD * (nods + rolls) / 2) / (rate * rate * rate);
  }

  /** Over both ends of an axis, per steradian, by the sine of the angle to it. */
  private static double about(double sine) {
    double off = sine / LOAD_SPREAD;
    return Math.exp(-off * off / 2) / (4 * Math.PI * LOAD_SPREAD * LOAD_SPREAD);
  }
}
