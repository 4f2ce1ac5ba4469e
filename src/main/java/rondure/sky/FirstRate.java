package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import rondure.base.RobustStats;

/** A first guess of the stars' spin in the sky's own axes, which jumps and single creeps miss. */
final class FirstRate {
  private static final int FEW = 12;
  private static final int WINDOWS = 10;
  private static final int ROUNDS = 60;
  private static final double SIDEREAL_WITHIN = 0.05;
  private static final double LEAST_SIDEREAL_SHARE = 0.15;

  private FirstRate() {}

  /**
   * Geometric median of the rates over windows of a block (Weiszfeld's iteration), rad/s; of those
   * alone that turn at the sky's rate where a fair share does: knocks in most gaps leave few such.
   */
  static Vec of(List<Pose> poses, Sight sight) {
    List<Vec> rates = rates(poses);
    List<Vec> sidereal = rates.stream().filter(FirstRate::isSidereal).toList();
    boolean enough = sidereal.size() >= LEAST_SIDEREAL_SHARE * rates.size();
    return sight.trust().scaleKnown() && sight.byClock() && enough
        ? middle(sidereal)
        : middle(rates);
  }

  private static boolean isSidereal(Vec rate) {
    double share = rate.length() / SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    return Math.abs(share - 1) < SIDEREAL_WITHIN;
  }

  private static Vec middle(List<Vec> rates) {
    Vec middle =
        new Vec(
            RobustStats.median(rates.stream().mapToDouble(Vec::x).toArray()),
            RobustStats.median(rates.stream().mapToDouble(Vec::y).toArray()),
            RobustStats.median(rates.stream().mapToDouble(Vec::z).toArray()));
    for (int round = 0; round < ROUNDS && !rates.isEmpty(); round++) {
      Vec sum = Vec.ZERO;
      double weights = 0;
      for (Vec rate : rates) {
        double weight = 1 / Math.max(1e-9, rate.minus(middle).length());
        sum = sum.plus(rate.times(weight));
        weights += weight;
      }
      middle = sum.times(1 / weights);
    }
    return rates.isEmpty() ? Vec.ZERO : middle;
  }

  private static List<Vec> rates(List<Pose> poses) {
    int lag = poses.size() < FEW ? 1 : poses.size() / WINDOWS;
    List<Vec> rates = new ArrayList<>();
    for (int i = 0; i + lag < poses.size(); i++) {
      double seconds = poses.get(i + lag).seconds() - poses.get(i).seconds();
      if (seconds > 0) {
        rates.add(poses.get(i).turnTo(poses.get(i + lag)).times(1 / seconds));
      }
    }
    return rates;
  }
}
