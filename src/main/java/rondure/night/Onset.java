package rondure.night;

import java.util.Arrays;

/** Where a series leaves its level, slowly or at once. */
final class Onset {
  /** A rise is followed until it reached this share of its most: further on it may bend. */
  private static final double RISEN_SHARE = 0.5;

  private Onset() {}

  /**
   * The first value that belongs to a rise: after the hinge between a level and a straight line
   * that fit best from where the level may begin to where half of the rise is done.
   *
   * @param values finite
   * @param from first value of what may be level
   * @param foot a value within the rise, > from
   * @param until last value of the rise, >= foot
   */
  static int of(double[] values, int from, int foot, int until) {
    double most = Arrays.stream(values, foot, until + 1).max().orElseThrow();
    int risen = foot;
    while (risen < until && values[risen] < RISEN_SHARE * most) {
      risen++;
    }
    double[] x = new double[risen - from + 1];
    double[] sigma = new double[x.length];
    Arrays.setAll(x, i -> i);
    Arrays.fill(sigma, 1);
    if (x.length < 3) {
      return foot;
    }
    Hinge hinge = Hinge.of(x, Arrays.copyOfRange(values, from, risen + 1), sigma, 1);
    int onset = from + hinge.start() + (hinge.start() == 0 ? 0 : 1);
    return Math.min(foot, onset);
  }
}
