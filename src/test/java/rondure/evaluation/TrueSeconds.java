package rondure.evaluation;

/** Exposure times that cameras name, and those they keep: 2^(n/3) s (common practice). */
final class TrueSeconds {
  private static final double LONGEST_NAMED = 30;
  private static final double[] NAMED = {
    0.5, 0.6, 0.8, 1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30
  };

  private TrueSeconds() {}

  /** The named time nearest to a wish; any whole second beyond the longest. */
  static double named(double wish) {
    if (wish > 1.1 * LONGEST_NAMED) {
      return Math.rint(wish);
    }
    double best = NAMED[0];
    for (double named : NAMED) {
      if (Math.abs(Math.log(named / wish)) < Math.abs(Math.log(best / wish))) {
        best = named;
      }
    }
    return best;
  }

  /** What a camera of that kind keeps the shutter open for. */
  static double of(double named) {
    return named > LONGEST_NAMED
        ? named
        : Math.pow(2, Math.rint(3 * Math.log(named) / Math.log(2)) / 3);
  }
}
