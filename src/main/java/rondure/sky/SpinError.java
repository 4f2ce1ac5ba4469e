package rondure.sky;

/**
 * Standard errors of a spin in the camera's axes: independent ones about each axis, and the
 * clock's, which makes a spin longer or shorter but does not turn it.
 *
 * @param axesRadPerS about the camera's axes
 * @param clockRadPerS along the spin; as long as the error
 */
record SpinError(Vec axesRadPerS, Vec clockRadPerS) {

  /** A difference over its errors, squared; a further error alike about all axes is added. */
  double chi2(Vec off, double extraRadPerS) {
    double alone = 0;
    double clock = 0;
    double both = 0;
    for (int k = 0; k < 3; k++) {
      double variance = Math.pow(Math.hypot(axesRadPerS.at(k), extraRadPerS), 2);
      alone += off.at(k) * off.at(k) / variance;
      clock += clockRadPerS.at(k) * clockRadPerS.at(k) / variance;
      both += off.at(k) * clockRadPerS.at(k) / variance;
    }
    // The inverse of a diagonal matrix with a dyad added (Sherman and Morrison).
    return alone - both * both / (1 + clock);
  }

  /** Of the difference of two spins of one camera, both about the same direction. */
  SpinError and(SpinError other) {
    double[] axes = new double[3];
    for (int k = 0; k < 3; k++) {
      axes[k] = Math.hypot(axesRadPerS.at(k), other.axesRadPerS.at(k));
    }
    double clock = Math.hypot(clockRadPerS.length(), other.clockRadPerS.length());
    return new SpinError(Vec.of(axes), clock > 0 ? clockRadPerS.withLength(clock) : Vec.ZERO);
  }

  /** Root mean square over the axes, rad/s. */
  double rms() {
    return Math.hypot(axesRadPerS.length(), clockRadPerS.length()) / Math.sqrt(3);
  }

  /** Along a direction, rad/s. */
  double along(Vec direction) {
    Vec unit = direction.withLength(1);
    double squares = Math.pow(unit.dot(clockRadPerS), 2);
    for (int k = 0; k < 3; k++) {
      squares += Math.pow(unit.at(k) * axesRadPerS.at(k), 2);
    }
    return Math.sqrt(squares);
  }
}
