package rondure.report.picture;

/** Moves things along a line as far as they need not to touch; their order stays. */
final class Spread {
  private Spread() {}

  /**
   * Middles of things that want to lie at places. The mean of what pushing them on alone and
   * pushing them back alone gives, so that both give way; then into the room there is.
   *
   * @param wanted middles, ascending
   * @param sizes along the line
   * @param apart least gap
   * @param low end of the room
   * @param high other end; where there is too little room things reach beyond it
   */
  static double[] of(double[] wanted, double[] sizes, double apart, double low, double high) {
    double[] on = pushedOn(wanted, sizes, apart, Double.NEGATIVE_INFINITY);
    double[] back = pushedBack(wanted, sizes, apart, Double.POSITIVE_INFINITY);
    double[] both = new double[wanted.length];
    for (int i = 0; i < both.length; i++) {
      both[i] = (on[i] + back[i]) / 2;
    }
    return pushedOn(pushedBack(both, sizes, apart, high), sizes, apart, low);
  }

  private static double[] pushedOn(double[] wanted, double[] sizes, double apart, double low) {
    double[] middles = new double[wanted.length];
    double free = low;
    for (int i = 0; i < middles.length; i++) {
      middles[i] = Math.max(wanted[i], free + sizes[i] / 2);
      free = middles[i] + sizes[i] / 2 + apart;
    }
    return middles;
  }

  private static double[] pushedBack(double[] wanted, double[] sizes, double apart, double high) {
    double[] middles = new double[wanted.length];
    double free = high;
    for (int i = middles.length - 1; i >= 0; i--) {
      middles[i] = Math.min(wanted[i], free - sizes[i] / 2);
      free = middles[i] - sizes[i] / 2 - apart;
    }
    return middles;
  }
}
