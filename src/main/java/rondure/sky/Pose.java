package rondure.sky;

/**
 * Where a frame looks and when.
 *
 * @param frame number
 * @param seconds middle of the exposure
 * @param turn from axes that turn with the sky to the camera's
 * @param errors standard errors of a small rotation about the camera's axes, rad; length 3, shared
 */
record Pose(int frame, double seconds, Rotation turn, double[] errors) {

  Pose at(double otherSeconds) {
    return new Pose(frame, otherSeconds, turn, errors);
  }

  /** How the sky turned from this frame to another, as a rotation vector in the sky's axes. */
  double[] turnTo(Pose later) {
    double[] inCamera = Vec.log(turn.inverse().then(later.turn));
    return Vec.turned(later.turn.inverse(), inCamera);
  }

  /**
   * The camera's attitude to the ground but for a constant: what is left of {@link #turn} when the
   * sky is turned back.
   */
  Rotation withoutSky(double[] skyRadPerS, double sinceSeconds) {
    return Rotation.of(Vec.spin(skyRadPerS), sinceSeconds - seconds).then(turn);
  }
}
