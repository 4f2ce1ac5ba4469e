package rondure.blur;

/**
 * How well a frame's stars tell its terms apart, expectations left out.
 *
 * <p>A frame's information on core, lens and its own parameters, with what the other frames say of
 * core and lens added: the condition number is that of the matrix scaled to a unit diagonal, so
 * that 1 means that nothing trades and infinity that something cannot be told at all.
 */
final class Conditions {
  private static final double MOST = 1e9;

  private final SceneSolution solution;
  private final double[][] reduced;

  Conditions(SceneSolution solution) {
    this.solution = solution;
    ArrowSystem system = new ArrowSystem(new Prior(FrameModel.SHARED), solution.shared(), 0);
    for (int frame : solution.together()) {
      add(system, frame);
    }
    reduced = system.reduced();
  }

  private FrameNormals normals(int frame) {
    return FrameNormals.of(solution.models().get(frame), solution.shared(), solution.own(frame), 0);
  }

  private void add(ArrowSystem system, int frame) {
    FrameNormals normals = normals(frame);
    Prior prior = new Prior(FrameModel.OWN);
    system.add(normals.matrix, normals.pull, prior, solution.own(frame));
  }

  /** Information of a frame on all parameters, shared first. */
  private double[][] information(int frame) {
    double[][] matrix = normals(frame).matrix;
    ArrowSystem alone = new ArrowSystem(new Prior(FrameModel.SHARED), solution.shared(), 0);
    boolean counted = solution.together().contains(frame);
    if (counted) {
      add(alone, frame);
    }
    for (int row = 0; row < FrameModel.SHARED; row++) {
      for (int column = 0; column < FrameModel.SHARED; column++) {
        double others = reduced[row][column] - (counted ? alone.reduced()[row][column] : 0);
        matrix[row][column] += others;
      }
    }
    return matrix;
  }

  /** Condition number, at most 1e9. */
  double of(int frame) {
    return Math.min(MOST, SymmetricSolve.condition(information(frame)));
  }

  /** Standard error of the disc, the lens being known, px. */
  double discErrorPx(int frame) {
    return error(frame, FrameModel.DISC);
  }

  /** Standard error of the round shake when the disc is free, the lens being known, px². */
  double roundErrorPx2(int frame) {
    return error(frame, FrameModel.SHAKE);
  }

  private double error(int frame, int parameter) {
    double[][] matrix = normals(frame).matrix;
    double[][] own = new double[FrameModel.OWN][];
    for (int k = 0; k < FrameModel.OWN; k++) {
      own[k] =
          java.util.Arrays.copyOfRange(
              matrix[FrameModel.SHARED + k], FrameModel.SHARED, FrameModel.ALL);
    }
    double[] unit = new double[FrameModel.OWN];
    unit[parameter] = 1;
    return Math.sqrt(Math.max(0, new SymmetricSolve(own, 0).solve(unit)[parameter]));
  }
}
