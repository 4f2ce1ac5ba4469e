package rondure.blur;

import java.util.List;
import rondure.sky.FrameSky;
import rondure.sky.SceneSky;
import rondure.sky.SkyMotion;
import rondure.sky.Spin;

/**
 * Whose the stars' motion is where frames tell only the sum of the sky's turning and a steady one
 * of the camera's.
 *
 * <p>The sky's part has the sidereal rate; where its pole is, nothing else tells. Such frames are
 * those of nights with long exposures, in which the head stands, or now and then gives way as well,
 * and those of nights in which it gives way: by any amount, and rather to its load: about the axis
 * to the right (it nods), the optical axis (it rolls), or across it (it slips), as often as about
 * any. Poles count even over the sphere, each by how likely the creep is that it leaves.
 */
final class DroopDoubt {
  private static final int POLES = 20_000;

  /** In a longer scene the pole wanders through the camera, which tells it from the creep. */
  private static final int FEW_FRAMES = 5;

  /** It does not where it is known no better than this; rad. */
  private static final double POLE_UNKNOWN = Math.toRadians(8);

  /** Slower creeps leave the pole as good as known, share of the sky's rate. */
  private static final double LEAST_CREEP = 0.08;

  private static final double SAME = 0.05;

  /** Logarithm of the fastest creep counted over half the least one. */
  private static final double SPAN = Math.log(20 / (LEAST_CREEP / 2));

  /** Of nights whose exposures are long, those whose head gives way besides. */
  private static final double BOTH = 0.15;

  /** Rates are no better known, share: focal lengths and clocks are not exact. */
  private static final double LEAST_ERROR = 0.005;

  /** Pictures taken upright, in which a head nods about the axis down. */
  private static final double UPRIGHT = 0.25;

  /** How nearly they do, rad. */
  private static final double LOAD_SPREAD = 0.15;

  /** Sums counted where the rate is not told, times the sky's rate. */
  private static final double SLOWEST = 0.1;

  private static final double FASTEST = 21;
  private static final int RATES = 16;
  private static final int AXIS_POLES = 500;

  /** Share of all creeps that leave the camera the larger part of the motion at the centre. */
  static final double CAMERA_LEADS = 0.45;

  private DroopDoubt() {}

  /**
   * Probability that the sky has more of the stars' motion at the centre than the camera.
   *
   * @param scene in which the sky turns
   */
  static double skyProbability(SceneEvidence scene) {
    double sky = skyProbability(scene.sky());
    if (sky == 1) {
      return 1;
    }
    double odds = sky / Math.max(1e-9, 1 - sky) * Math.exp(StandingCamera.logOddsByGround(scene));
    return odds / (1 + odds);
  }

  /** The same by the motion of the stars alone. */
  static double skyProbability(SceneSky scene) {
    double rate = SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    List<FrameSky> told = scene.frames().stream().filter(f -> f.starSpin().isPresent()).toList();
    boolean open = told.size() <= FEW_FRAMES || Math.toRadians(scene.poleErrorDeg()) > POLE_UNKNOWN;
    if (told.size() < 2 || !open) {
      return 1;
    }
    FrameSky first = told.get(0);
    boolean alike =
        told.stream().allMatch(f -> f.creep().minus(first.creep()).rateRadPerS() < SAME * rate);
    double error = Math.max(LEAST_ERROR, first.spinErrorRadPerS() / rate);
    return alike ? skyProbability(first.starSpin().orElseThrow().times(1 / rate), error) : 1;
  }

  /**
   * @param sum of both spins over the sidereal rate
   * @param error of its length, standard
   */
  static double skyProbability(Spin sum, double error) {
    double skys = 0;
    double cameras = 0;
    double moved = across(sum.xRadPerS(), sum.yRadPerS());
    for (int i = 0; i < POLES; i++) {
      double z = 2 * (i + 0.5) / POLES - 1;
      double turn = i * Math.PI * (3 - Math.sqrt(5));
      double x = Math.sqrt(1 - z * z) * Math.cos(turn);
      double y = Math.sqrt(1 - z * z) * Math.sin(turn);
      double weight = density(sum.xRadPerS() - x, sum.yRadPerS() - y, sum.zRadPerS() - z) / POLES;
      boolean sky = across(x, y) > moved / 2;
      skys += sky ? weight : 0;
      cameras += sky ? 0 : weight;
    }
    double sky = (1 - BOTH) * calm(sum.rateRadPerS(), error) + BOTH * skys;
    return sky / (sky + cameras);
  }

  /**
   * Logarithm of how much likelier a calm camera is to show an axis than one that gives way by more
   * than the sky turns, where no rate is told: the pole may be anywhere, heads nod and slip.
   *
   * @param sum of both spins, of any length
   */
  static double calmLogOdds(Spin sum) {
    Spin axis = sum.times(1 / sum.rateRadPerS());
    double cameras = 0;
    for (int j = 0; j < RATES; j++) {
      double rate = Math.exp((j + 0.5) / RATES * Math.log(FASTEST / SLOWEST)) * SLOWEST;
      double step = rate * rate * rate * Math.log(FASTEST / SLOWEST) / RATES;
      cameras += step * cameras(axis.times(rate), AXIS_POLES);
    }
    return -Math.log(4 * Math.PI * cameras / CAMERA_LEADS);
  }

  /** Density of sums of which the camera has the larger part. */
  private static double cameras(Spin sum, int poles) {
    double moved = across(sum.xRadPerS(), sum.yRadPerS());
    double cameras = 0;
    for (int i = 0; i < poles; i++) {
      double z = 2 * (i + 0.5) / poles - 1;
      double turn = i * Math.PI * (3 - Math.sqrt(5));
      double x = Math.sqrt(1 - z * z) * Math.cos(turn);
      double y = Math.sqrt(1 - z * z) * Math.sin(turn);
      if (across(x, y) <= moved / 2) {
        cameras += density(sum.xRadPerS() - x, sum.yRadPerS() - y, sum.zRadPerS() - z) / poles;
      }
    }
    return cameras;
  }

  /** Density of a sum that is the sky's alone. */
  private static double calm(double rate, double error) {
    double off = (rate - 1) / error;
    return Math.exp(-off * off / 2) / (Math.sqrt(2 * Math.PI) * error) / (4 * Math.PI);
  }

  private static double across(double x, double y) {
    return x * x + y * y;
  }

  /** Of a creep: even in the logarithm of its rate, about each kind of axis as often. */
  private static double density(double x, double y, double z) {
    double rate = Math.max(LEAST_CREEP / 2, Math.sqrt(x * x + y * y + z * z));
    double any = 1 / (4 * Math.PI);
    double nods =
        (1 - UPRIGHT) * about(Math.hypot(y, z) / rate) + UPRIGHT * about(Math.hypot(x, z) / rate);
    double rolls = about(Math.hypot(x, y) / rate);
    double axis = (any + nods + rolls + across(z / rate)) / 4;
    return axis / (SPAN * rate * rate * rate);
  }

  /** About axes across the optical one, which shift the picture any way, per steradian. */
  private static double across(double sineAlong) {
    double off = sineAlong / LOAD_SPREAD;
    return Math.exp(-off * off / 2) / (2 * Math.PI * Math.sqrt(2 * Math.PI) * LOAD_SPREAD);
  }

  /** Over both ends of an axis, per steradian, by the sine of the angle to it. */
  private static double about(double sine) {
    double off = sine / LOAD_SPREAD;
    return Math.exp(-off * off / 2) / (4 * Math.PI * LOAD_SPREAD * LOAD_SPREAD);
  }
}
