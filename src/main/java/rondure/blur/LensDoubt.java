package rondure.blur;

/**
 * How far the numbers of a scene's lens may be off.
 *
 * <p>Where a lens is nearly flat and every frame well focused, stars hardly change with a little
 * curvature or astigmatism: the fit then rests on what was expected, and blocks drawn anew agree
 * with each other whatever the truth. So the error is at least that of the fit with its
 * expectations, but no more than would widen the corners beyond what they leave open: as much as
 * the error of coma, which widens them as well.
 */
final class LensDoubt {
  /** A disc of defocus adds a sixteenth of its square, coma a third of its own. */
  private static final double DISC_OVER_COMA = 16 / 3.0;

  /** Astigmatism counts by half its difference. */
  private static final double SPLIT = 2;

  /** Few stars stand where r⁴ has grown: such a term is known half as well as one with r². */
  private static final double STEEPER = 2;

  private final double[] drawn = new double[FrameModel.SHARED];
  private final double[] fitted = new double[FrameModel.SHARED];

  private LensDoubt(SceneSolution solution, double[][] sharedSteps) {
    ArrowSystem system = new ArrowSystem(solution.sharedPrior(), solution.shared(), 0);
    for (int frame : solution.together()) {
      FrameNormals normals =
          FrameNormals.of(solution.models().get(frame), solution.shared(), solution.own(frame), 0);
      system.add(normals.matrix, normals.pull, solution.ownPrior(frame), solution.own(frame));
    }
    SymmetricSolve inverse = new SymmetricSolve(system.reduced(), 0);
    for (int k = 0; k < FrameModel.SHARED; k++) {
      double[] unit = new double[FrameModel.SHARED];
      unit[k] = 1;
      fitted[k] = Math.sqrt(Math.max(0, inverse.solve(unit)[k]));
      for (double[] step : sharedSteps) {
        drawn[k] += step[k] * step[k] / sharedSteps.length;
      }
      drawn[k] = Math.sqrt(drawn[k]);
    }
  }

  /**
   * Errors of a solved scene's lens.
   *
   * @param sharedSteps of the shared parameters, blocks of the field drawn anew
   */
  static LensErrors of(SceneSolution solution, double[][] sharedSteps) {
    LensDoubt doubt = new LensDoubt(solution, sharedSteps);
    double coma = Math.max(doubt.drawn[FrameModel.COMA], doubt.fitted[FrameModel.COMA]);
    double disc = Math.sqrt(DISC_OVER_COMA * STEEPER * coma);
    return new LensErrors(
        doubt.error(FrameModel.TILT_RIGHT, disc),
        doubt.error(FrameModel.TILT_DOWN, disc),
        doubt.error(FrameModel.CURVATURE, disc),
        doubt.error(FrameModel.ASTIGMATISM, SPLIT * disc),
        coma);
  }

  private double error(int parameter, double most) {
    return Math.max(drawn[parameter], Math.min(fitted[parameter], most));
  }
}
