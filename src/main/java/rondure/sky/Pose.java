package rondure.sky;

/**
 * Where a frame looks and when.
 *
 * @param frame number
 * @param seconds middle of the exposure; NaN when not known
 * @param turn from axes that turn with the sky to the camera's
 * @param errors standard errors of a small rotation about the camera's axes, rad
 */
record Pose(int frame, double seconds, Rotation turn, Vec errors) {

  Pose at(double otherSeconds) {
    return new Pose(frame, otherSeconds, turn, errors);
  }

  /** How the sky turned from this frame to another, as a rotation vector in the sky's axes. */
  Vec turnTo(Pose later) {
    return Vec.log(turn.inverse().then(later.turn)).turned(later.turn.inverse());
  }

  /**
   * The camera's attitude to the ground but for a constant: what is left of {@link #turn} when the
   * sky is turned back to a time.
   *
   * @param skyRadPerS the sky's spin in its own axes
   */
  Rotation withoutSky(Vec skyRadPerS, double toSeconds) {
    return skyRadPerS.times(toSeconds - seconds).exp().then(turn);
  }

  /** How far the camera turned from this pose to a later one, the sky turned back, rad. */
  double stepTo(Pose later, Vec skyRadPerS) {
    Rotation before = withoutSky(skyRadPerS, seconds);
    return before.inverse().then(later.withoutSky(skyRadPerS, seconds)).angleRad();
  }
}
