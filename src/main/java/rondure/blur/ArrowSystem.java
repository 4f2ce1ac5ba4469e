package rondure.blur;

import java.util.ArrayList;
import java.util.List;

/**
 * Normal equations of shared parameters and of many frames' own, which do not meet each other:
 * solved by taking each frame's own parameters out first (Schur's complement).
 */
final class ArrowSystem {
  private static final int SHARED = FrameModel.SHARED;

  private final double damping;
  private final double[][] reduced = new double[SHARED][SHARED];
  private final double[] pull = new double[SHARED];
  private final List<ArrowFrame> frames = new ArrayList<>();

  ArrowSystem(Prior sharedPrior, double[] shared, double damping) {
    this.damping = damping;
    for (int k = 0; k < SHARED; k++) {
      reduced[k][k] = sharedPrior.precision(k, shared[k]);
      pull[k] = sharedPrior.pull(k, shared[k]);
    }
  }

  /** Adds a frame with its normal equations, shared parameters first. */
  void add(double[][] matrix, double[] framePull, Prior prior, double[] own) {
    ArrowFrame frame = new ArrowFrame(matrix, framePull, prior, own, damping);
    for (int row = 0; row < SHARED; row++) {
      pull[row] += framePull[row];
      for (int column = 0; column < SHARED; column++) {
        reduced[row][column] += matrix[row][column];
      }
    }
    frame.reduce(reduced, pull);
    frames.add(frame);
  }

  /** What is known of the shared parameters once the frames' own are free. */
  double[][] reduced() {
    return reduced;
  }

  double[] sharedStep() {
    return new SymmetricSolve(reduced, damping).solve(pull);
  }

  /** A frame's own step once the shared one is known. */
  double[] ownStep(int frame, double[] sharedStep) {
    return frames.get(frame).step(sharedStep);
  }
}
