package rondure.blur;

/** One frame's part of an {@link ArrowSystem}: its own parameters as the shared ones leave them. */
final class ArrowFrame {
  private static final int SHARED = FrameModel.SHARED;
  private static final int OWN = FrameModel.OWN;

  private final SymmetricSolve solve;
  private final double[] pull = new double[OWN];

  /** How the frame's own parameters meet the shared ones, a row for each of these. */
  private final double[][] meeting = new double[SHARED][OWN];

  /**
   * @param matrix normal equations of the frame's stars, shared parameters first
   * @param framePull their right side
   * @param prior of its own parameters
   * @param own where these are
   * @param damping see {@link SymmetricSolve}
   */
  ArrowFrame(double[][] matrix, double[] framePull, Prior prior, double[] own, double damping) {
    double[][] ownMatrix = new double[OWN][OWN];
    for (int k = 0; k < OWN; k++) {
      System.arraycopy(matrix[SHARED + k], SHARED, ownMatrix[k], 0, OWN);
      ownMatrix[k][k] += prior.precision(k, own[k]);
      pull[k] = framePull[SHARED + k] + prior.pull(k, own[k]);
    }
    for (int s = 0; s < SHARED; s++) {
      System.arraycopy(matrix[s], SHARED, meeting[s], 0, OWN);
    }
    solve = new SymmetricSolve(ownMatrix, damping);
  }

  /** Takes from the shared parameters' equations what the frame's own parameters take up. */
  void reduce(double[][] shared, double[] sharedPull) {
    double[] answered = solve.solve(pull);
    for (int row = 0; row < SHARED; row++) {
      double[] through = solve.solve(meeting[row]);
      sharedPull[row] -= dot(meeting[row], answered);
      for (int column = 0; column < SHARED; column++) {
        shared[row][column] -= dot(through, meeting[column]);
      }
    }
  }

  /** Its own step once the shared one is known. */
  double[] step(double[] sharedStep) {
    double[] right = pull.clone();
    for (int s = 0; s < SHARED; s++) {
      for (int k = 0; k < OWN; k++) {
        right[k] -= meeting[s][k] * sharedStep[s];
      }
    }
    return solve.solve(right);
  }

  private static double dot(double[] one, double[] two) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * two[i];
    }
    return sum;
  }
}
