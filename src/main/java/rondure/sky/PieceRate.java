package rondure.sky;

/**
 * How the stars turned during a stretch of frames in which nothing changed.
 *
 * @param piece frames of its aim, by their place there
 * @param rate the stars' spin in the sky's own axes, rad/s
 * @param errors standard errors about the camera's axes, rad/s
 * @param turn from the sky's axes to the camera's about its middle
 * @param seconds it lasted
 */
record PieceRate(
    PathPieces.Piece piece, double[] rate, double[] errors, Rotation turn, double seconds) {

  /** A difference of rates over the errors, squared; a further isotropic error may be added. */
  double chi2(double[] otherRate, double extraRadPerS) {
    double[] inCamera = Vec.turned(turn, Vec.minus(rate, otherRate));
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double error = Math.hypot(errors[axis], extraRadPerS);
      sum += inCamera[axis] * inCamera[axis] / (error * error);
    }
    return sum;
  }

  double rmsError() {
    return Vec.length(errors) / Math.sqrt(3);
  }
}
