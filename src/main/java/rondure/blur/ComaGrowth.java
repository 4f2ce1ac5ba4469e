package rondure.blur;

/** How the moments of coma grow away from the optical axis. */
public enum ComaGrowth {
  /** Seidel's: its size with r, its moments with r². */
  SEIDEL,
  /** Of higher order, as in fast wide lenses: its size with r², its moments with r⁴. */
  STEEP;

  /**
   * Moments over those in a corner.
   *
   * @param square r², 1 in a corner
   */
  double at(double square) {
    return this == SEIDEL ? square : square * square;
  }
}
