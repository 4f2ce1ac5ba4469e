package rondure.blur;

import java.util.ArrayList;
import java.util.List;

/**
 * Normal equations of shared parameters and of many frames' own, which do not meet each other:
 * solved by taking each frame's own parameters out first (Schur's complement).
 */
final class ArrowSystem {
  private static final int SHARED = FrameModel.SHARED;
  private static final int OWN = FrameModel.OWN;

  private final double damping;
  private final double[][] reduced = new double[SHARED][SHARED];
  private final double[] pull = new double[SHARED];
  private final List<SymmetricSolve> solves = new ArrayList<>();
  private final List<double[]> pulls = new ArrayList<>();
  private final List<double[][]> meetings = new ArrayList<>();

  ArrowSystem(Prior sharedPrior, double[] shared, double damping) {
    this.damping = damping;
    for (int k = 0; k < SHARED; k++) {
      reduced[k][k] = sharedPrior.precision(k);
      pull[k] = sharedPrior.pull(k, shared[k]);
    }
  }

  /** Adds a frame with its normal equations, shared parameters first. */
  void add(double[][] matrix, double[] framePull, Prior prior, double[] own) {
    double[][] ownMatrix = new double[OWN][OWN];
    double[][] meeting = new double[SHARED][OWN];
    double[] ownPull = new double[OWN];
    for (int k = 0; k < OWN; k++) {
      System.arraycopy(matrix[SHARED + k], SHARED, ownMatrix[k], 0, OWN);
      ownMatrix[k][k] += prior.precision(k);
      ownPull[k] = framePull[SHARED + k] + prior.pull(k, own[k]);
      for (int s = 0; s < SHARED; s++) {
        meeting[s][k] = matrix[s][SHARED + k];
      }
    }
    SymmetricSolve solve = new SymmetricSolve(ownMatrix, damping);
    solves.add(solve);
    pulls.add(ownPull);
    meetings.add(meeting);
    reduce(matrix, framePull, solve, ownPull, meeting);
  }

  private void reduce(
      double[][] matrix,
      double[] framePull,
      SymmetricSolve solve,
      double[] ownPull,
      double[][] meeting) {
    double[] answered = solve.solve(ownPull);
    for (int row = 0; row < SHARED; row++) {
      double[] through = solve.solve(meeting[row]);
      pull[row] += framePull[row] - dot(meeting[row], answered);
      for (int column = 0; column < SHARED; column++) {
        reduced[row][column] += matrix[row][column] - dot(through, meeting[column]);
      }
    }
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
    double[] right = pulls.get(frame).clone();
    for (int s = 0; s < SHARED; s++) {
      for (int k = 0; k < OWN; k++) {
        right[k] -= meetings.get(frame)[s][k] * sharedStep[s];
      }
    }
    return solves.get(frame).solve(right);
  }

  private static double dot(double[] one, double[] two) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * two[i];
    }
    return sum;
  }
}
