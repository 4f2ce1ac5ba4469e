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
    PathPieces.Piece piece, Vec rate, SpinError errors, Rotation turn, double seconds) {

  /** A difference of rates over the errors, squared; a further isotropic error may be added. */
  double chi2(Vec otherRate, double extraRadPerS) {
    return errors.chi2(rate.minus(otherRate).turned(turn), extraRadPerS);
  }

  /** Root mean square over the axes, rad/s. */
  double rmsError() {
    return errors.rms();
  }

  /** Of the rate's length, rad/s. */
  double alongError() {
    return errors.along(rate.turned(turn));
  }
}
