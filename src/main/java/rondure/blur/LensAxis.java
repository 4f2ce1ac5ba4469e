package rondure.blur;

/**
 * Where a lens is sharpest when that is not the middle of the frame: a cut picture or a decentred
 * lens.
 *
 * <p>Only a stretch away from the axis counts: trails about a pole of the sky run around their
 * centre, never away from it.
 */
final class LensAxis {
  private static final int STEPS = 3;
  private static final double STEP_SHARE = 0.15;

  /** Two more parameters at far more than 4.5 σ, for what no such lens model describes. */
  private static final double LEAST_GAIN = 40;

  private LensAxis() {}

  /** The field with the lens axis where its stretch is explained best; as it was, if unsure. */
  static SmearField settle(SmearField field) {
    double centred = SmearFits.lensOnly(field).loss();
    SmearField best = field;
    double least = centred - LEAST_GAIN;
    for (int row = -STEPS; row <= STEPS; row++) {
      for (int column = -STEPS; column <= STEPS; column++) {
        double step = STEP_SHARE * field.halfDiagonalPx;
        SmearField moved = field.withLensAt(column * step, row * step);
        SmearModel model = SmearFits.lensOnly(moved);
        if (model.loss() < least && model.radialPx2() > 0) {
          best = moved;
          least = model.loss();
        }
      }
    }
    return best;
  }
}
