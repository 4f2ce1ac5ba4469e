package rondure.blur;

/**
 * The core that a scene's sharpest frames leave, and how far it may be trusted.
 *
 * @param px2 second moment per axis of the sharpest place and frame, trail and lens taken off
 * @param fwhmPx its half-maximum width
 * @param ifDefocusedPx2 the core to expect if all frames are out of focus
 * @param realProbability probability that {@code px2} is the lens and sensor at their best, and not
 *     the same defocus in every frame
 * @param visibleShare second moment of the Gaussian of the core's half-maximum width over the
 *     core's own, at most 1: less where it has wings, which widen it and which one hardly sees
 */
public record CoreReading(
    double px2, double fwhmPx, double ifDefocusedPx2, double realProbability, double visibleShare) {
  public CoreReading {
    if (!(px2 > 0 && fwhmPx > 0 && ifDefocusedPx2 > 0)) {
      throw new IllegalArgumentException(
          "core must be > 0, was " + px2 + ", " + fwhmPx + ", " + ifDefocusedPx2);
    }
    if (!(realProbability >= 0 && realProbability <= 1)) {
      throw new IllegalArgumentException(
          "realProbability must be in [0, 1], was " + realProbability);
    }
    if (!(visibleShare > 0 && visibleShare <= 1)) {
      throw new IllegalArgumentException("visibleShare must be in (0, 1], was " + visibleShare);
    }
  }
}
