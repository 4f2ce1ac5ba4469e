package rondure.sky;

/**
 * Where a frame looks.
 *
 * @param turn from the block's axes to the camera's
 * @param errors standard errors of a small rotation about the camera's axes, rad
 * @param misfitPx robust scatter of the stars about their places
 * @param stars used
 */
record Attitude(Rotation turn, Vec errors, double misfitPx, int stars) {
  /** As a link foretells it. */
  static Attitude foretold(Rotation turn) {
    return new Attitude(turn, Vec.ZERO, 0, 0);
  }
}
