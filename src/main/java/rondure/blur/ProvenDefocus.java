package rondure.blur;

/**
 * Whether the field proves that a scene's sharpest frames are out of focus: whether in focus they
 * fit worse than chance allows.
 *
 * <p>Asked is by how much χ² grows when they are held in focus, lens and core free, over where they
 * are left alone (likelihood ratio of one number, the disc that they share). Widths measured wrong
 * with the width prove nothing ({@link TolerantLoss}), nor what stars of one place miss together.
 */
final class ProvenDefocus {
  /** Half of χ² with one degree of freedom that chance exceeds once in a thousand times. */
  private static final double ONE_IN_A_THOUSAND = 5.41;

  private ProvenDefocus() {}

  /**
   * @param held with the sharpest frames held in focus
   * @param free with the expectation loose, of the same frames
   * @param misfit see {@link SharedMisfit}
   */
  static boolean between(SceneSolution held, SceneSolution free, double misfit) {
    double lost = fieldLoss(held) - fieldLoss(free);
    return lost > ONE_IN_A_THOUSAND * Explanations.CAUTION * misfit;
  }

  private static double fieldLoss(SceneSolution solution) {
    return new TolerantLoss(solution, solution.together(), Explanations.CURVE_SHARE).value();
  }
}
