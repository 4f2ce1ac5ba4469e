package rondure.blur;

/**
 * How far budgets are off beyond their formal errors.
 *
 * @param coreShare relative error of the core
 * @param termShare relative error of each term: profiles that are no Gaussians, lens surfaces that
 *     are no polynomials
 * @param floorShare error of each term as a share of the core
 * @param tradeShare how much of what the budget calls tradeable is drawn between focus and tripod
 */
record Leeway(double coreShare, double termShare, double floorShare, double tradeShare) {

  Leeway {
    if (!(coreShare >= 0 && termShare >= 0 && floorShare >= 0 && tradeShare >= 0)) {
      throw new IllegalArgumentException("errors must be >= 0");
    }
  }

  /** Fitted on the calibration nights (docs/accuracy.md). */
  static Leeway fitted() {
    return new Leeway(0.02, 0.05, 0.02, 1);
  }
}
