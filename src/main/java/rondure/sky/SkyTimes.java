package rondure.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;

/**
 * Times for the frames of a block: the clock's where it can be right, else the sky's own turning.
 *
 * @param poses with times
 * @param byClock whether the clock was used; otherwise the sky is taken to turn at its own rate
 *     between any two frames, forward in their order
 */
record SkyTimes(List<Pose> poses, boolean byClock) {
  private static final double LEAST_SHARE_RUNNING = 0.8;
  private static final double LARGEST_RATE_SCATTER = 0.35;
  private static final double ODD_RATE_SHARE = 0.3;
  private static final double LEAST_WRONG_SECONDS = 30;
  private static final double LARGEST_ACROSS_SHARE = 0.005;
  private static final int LEAST_GAPS_TO_COMPARE = 4;
  private static final int MOST_AXES_TRIED = 40;

  /**
   * @param poses of one block in the order of the frames, seconds NaN where not known
   * @param stepSeconds of the clock
   */
  static SkyTimes of(List<Pose> poses, double stepSeconds) {
    int gaps = poses.size() - 1;
    double[] seconds = new double[gaps];
    double[] turned = new double[gaps];
    Optional<Vec> axis = axis(poses);
    int running = 0;
    for (int k = 0; k < gaps; k++) {
      seconds[k] = poses.get(k + 1).seconds() - poses.get(k).seconds();
      turned[k] = axis.isEmpty() ? 0 : axis.get().dot(poses.get(k).turnTo(poses.get(k + 1)));
      running += seconds[k] > 0 ? 1 : 0;
    }
    boolean runs = running >= Math.max(1, LEAST_SHARE_RUNNING * gaps);
    if (runs && isSteady(seconds, plain(poses), stepSeconds)) {
      return new SkyTimes(mended(poses, seconds, turned, stepSeconds), true);
    }
    return new SkyTimes(bySky(poses, turned), false);
  }

  /** Principal direction of the frames' turns, along most of them. */
  private static Optional<Vec> axis(List<Pose> poses) {
    Vec sum = Vec.ZERO;
    for (int round = 0; round < 3; round++) {
      Vec next = Vec.ZERO;
      for (int k = 0; k + 1 < poses.size(); k++) {
        Vec turn = poses.get(k).turnTo(poses.get(k + 1));
        double length = Math.max(1e-12, turn.length());
        double sign = round == 0 ? 1 : Math.signum(sum.dot(turn));
        // Square roots keep a single great turn (a new aim) from deciding alone.
        next = next.plus(turn.times(sign / Math.sqrt(length)));
      }
      sum = next;
    }
    return sum.length() > 0 ? Optional.of(sum.withLength(1)) : Optional.empty();
  }

  /**
   * Turns from frame to frame about the axis that most of them share; NaN for the others: a wrong
   * clock makes turns about one axis too long or too short, a tripod that moves turns the axis.
   */
  private static double[] plain(List<Pose> poses) {
    double[] plain = new double[0];
    long most = -1;
    int step = Math.max(1, poses.size() / MOST_AXES_TRIED);
    for (int k = 0; k + 1 < poses.size(); k += step) {
      Vec turn = poses.get(k).turnTo(poses.get(k + 1));
      double[] about = turn.length() > 0 ? about(poses, turn.withLength(1)) : new double[0];
      if (told(about) > most) {
        plain = about;
        most = told(about);
      }
    }
    return plain;
  }

  private static double[] about(List<Pose> poses, Vec axis) {
    double[] turned = new double[poses.size() - 1];
    for (int k = 0; k < turned.length; k++) {
      double along = axis.dot(poses.get(k).turnTo(poses.get(k + 1)));
      turned[k] = isLikeAPlainTurn(poses, k, along) ? along : Double.NaN;
    }
    return turned;
  }

  private static long told(double[] turned) {
    return Arrays.stream(turned).filter(t -> !Double.isNaN(t)).count();
  }

  /** Whether the sky turned evenly by this clock, as far as its steps let one tell. */
  private static boolean isSteady(double[] seconds, double[] turned, double stepSeconds) {
    if (told(turned) < LEAST_GAPS_TO_COMPARE) {
      return true;
    }
    double[] rates = new double[seconds.length];
    for (int k = 0; k < rates.length; k++) {
      rates[k] = seconds[k] > 2 * stepSeconds ? turned[k] / seconds[k] : Double.NaN;
    }
    double middle = Math.abs(RobustStats.median(rates));
    double least = 0.2 * SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    return Double.isNaN(middle)
        || RobustStats.madSigma(rates) < LARGEST_RATE_SCATTER * Math.max(middle, least);
  }

  /** Single gaps that the clock tells wrongly or not at all get the sky's time. */
  private static List<Pose> mended(
      List<Pose> poses, double[] seconds, double[] turned, double stepSeconds) {
    double[] rates = new double[seconds.length];
    for (int k = 0; k < rates.length; k++) {
      rates[k] = seconds[k] > 0 ? turned[k] / seconds[k] : Double.NaN;
    }
    double rate = RobustStats.median(rates);
    boolean follows = Math.abs(rate) > 0.5 * SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    List<Pose> timed = new ArrayList<>();
    double now = Double.isNaN(poses.get(0).seconds()) ? 0 : poses.get(0).seconds();
    timed.add(poses.get(0).at(now));
    for (int k = 0; k < seconds.length; k++) {
      double bySky = follows ? turned[k] / rate : RobustStats.median(seconds);
      double odd = Math.abs(bySky - seconds[k]) - LEAST_WRONG_SECONDS - 3 * stepSeconds;
      boolean wrong = !(seconds[k] > 0) || (follows && odd > ODD_RATE_SHARE * seconds[k]);
      now +=
          wrong && bySky > 0 && isLikeAPlainTurn(poses, k, turned[k])
              ? bySky
              : Math.max(1e-3, orZero(seconds[k]));
      timed.add(poses.get(k + 1).at(now));
    }
    return timed;
  }

  private static double orZero(double value) {
    return Double.isNaN(value) ? 0 : value;
  }

  /** Whether a turn is about the common axis, so that only its time is odd, not its direction. */
  private static boolean isLikeAPlainTurn(List<Pose> poses, int k, double turned) {
    double whole = poses.get(k).turnTo(poses.get(k + 1)).length();
    double across = Math.sqrt(Math.max(0, whole * whole - turned * turned));
    return across < LARGEST_ACROSS_SHARE * whole + 3 * poses.get(k).errors().length();
  }

  private static List<Pose> bySky(List<Pose> poses, double[] turned) {
    List<Pose> timed = new ArrayList<>();
    double now = 0;
    timed.add(poses.get(0).at(now));
    for (int k = 0; k < turned.length; k++) {
      now += turned[k] / SkyMotion.SIDEREAL_RATE_RAD_PER_S;
      timed.add(poses.get(k + 1).at(now));
    }
    return timed;
  }
}
