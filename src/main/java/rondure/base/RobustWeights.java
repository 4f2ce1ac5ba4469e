package rondure.base;

/**
 * Weights of iteratively reweighted least squares, by the misfit u over its standard deviation.
 *
 * <p>Both constants give 95 % of the efficiency of least squares on Gaussian noise in one dimension
 * (Huber 1981, Robust Statistics; Beaton &amp; Tukey 1974, Technometrics 16, 147; from memory).
 */
public final class RobustWeights {
  public static final double HUBER_CONSTANT = 1.345;
  public static final double TUKEY_CONSTANT = 4.685;

  private RobustWeights() {}

  /** Huber's: min(1, 1.345 / |u|). Outliers pull, but not more than others. */
  public static double huber(double misfit) {
    double size = Math.abs(misfit);
    return size <= HUBER_CONSTANT ? 1 : HUBER_CONSTANT / size;
  }

  /** Tukey's biweight: (1 - (u / 4.685)²)², and 0 beyond. Outliers do not count. */
  public static double tukey(double misfit) {
    double left = left(misfit);
    return left * left;
  }

  /**
   * How much of Tukey's influence u w(u) grows with the misfit, averaged over the directions of a
   * misfit with several components: w + u w'(u) / d. Its mean over the data, a, and the mean b of
   * w² u² / d give the covariance of a robust fit, b / a² times that of least squares (Huber 1981,
   * ch. 7; from memory).
   *
   * @param dimensions d of the misfit: 1 for a number, 2 for a place in an image
   */
  public static double tukeySlope(double misfit, int dimensions) {
    double left = left(misfit);
    return left * left - 4 * left * (1 - left) / dimensions;
  }

  private static double left(double misfit) {
    double share = misfit / TUKEY_CONSTANT;
    return Math.max(0, 1 - share * share);
  }
}
