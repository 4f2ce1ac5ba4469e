package rondure.night;

import java.util.Arrays;

/**
 * Where a series leaves its level, slowly or at once.
 *
 * @param first index of the first value that belongs to the rise
 * @param span where it may be as well, within 2 σ
 */
record Onset(int first, FrameSpan span) {
  /** A rise is followed until it reached this share of its most: further on it may bend. */
  private static final double RISEN_SHARE = 0.5;

  /**
   * The first value that belongs to a rise is that after the hinge between a level and a straight
   * line that fit best from where the level may begin to where half of the rise is done.
   *
   * @param values finite
   * @param from first value of what may be level
   * @param foot a value within the rise, > from
   * @param until last value of the rise, >= foot
   */
  static Onset of(double[] values, int from, int foot, int until) {
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
      return at(foot);
    }
    Hinge hinge = Hinge.of(x, Arrays.copyOfRange(values, from, risen + 1), sigma, 1);
    int onset = Math.min(foot, from + after(hinge.start()));
    int earliest = Math.min(onset, from + after(hinge.earliest()));
    return new Onset(onset, new FrameSpan(earliest, Math.max(onset, from + after(hinge.latest()))));
  }

  /** A rise whose beginning is plain. */
  static Onset at(int first) {
    return new Onset(first, FrameSpan.at(first));
  }

  /**
   * The first value after a level that ends at an index; a line from the first value is all rise.
   */
  static int after(int hinge) {
    return hinge == 0 ? 0 : hinge + 1;
  }
}
