package rondure.blur;

/**
 * What each cause adds to a star's second moment: mean of the two axes, px².
 *
 * @param corePx2 lens and sensor at their best, the pixel's own 1/12 px² included
 * @param focusPx2 the field's mean signed disc: what refocusing would cure
 * @param trailingPx2 the sky's motion
 * @param tripodPx2 the camera's motion, with what it adds to or takes from the sky's
 * @param lensPx2 what varies over the field and repeats from frame to frame
 * @param hazePx2 light scattered into a halo
 * @param unexplainedPx2 measured minus all of these; may be negative
 */
public record Terms(
    double corePx2,
    double focusPx2,
    double trailingPx2,
    double tripodPx2,
    double lensPx2,
    double hazePx2,
    double unexplainedPx2) {

  /** Of a cause; of none: the core. */
  public double of(Cause cause) {
    return switch (cause) {
      case NONE -> corePx2;
      case FOCUS -> focusPx2;
      case TRAILING -> trailingPx2;
      case TRIPOD -> tripodPx2;
      case LENS -> lensPx2;
      case HAZE -> hazePx2;
    };
  }

  Terms withHaze(double px2) {
    return new Terms(corePx2, focusPx2, trailingPx2, tripodPx2, lensPx2, px2, unexplainedPx2);
  }

  /** The same beside a core of another second moment. */
  Terms withCore(double px2) {
    return new Terms(px2, focusPx2, trailingPx2, tripodPx2, lensPx2, hazePx2, unexplainedPx2);
  }

  /** All that the causes add to the core, px². */
  public double excessPx2() {
    return focusPx2 + trailingPx2 + tripodPx2 + lensPx2 + hazePx2;
  }

  /** r.m.s. width over the core's. */
  public double widening() {
    return Math.sqrt(Math.max(0, 1 + excessPx2() / corePx2));
  }
}
