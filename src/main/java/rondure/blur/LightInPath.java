package rondure.blur;

import rondure.stars.StarField;

/** Light that is not lost but lies where a moving camera drew it, outside the measured star. */
final class LightInPath {
  /** Smaller losses are not worth the search. */
  private static final double LEAST_LOSS_MAG = 0.15;

  /** Light in a faint tail, from simulated hands on the shutter: up to so much. */
  private static final double IN_TAIL_MAG = 0.25;

  private LightInPath() {}

  /** The loss, less certain where a tail holds some of the light. */
  static FrameLight.Loss doubted(FrameLight.Loss loss, StarField field) {
    if (loss.lossMag() < LEAST_LOSS_MAG || FaintTail.of(field, FieldShape.of(field)).isEmpty()) {
      return loss;
    }
    return new FrameLight.Loss(
        loss.lossMag(),
        Math.hypot(loss.errorMag(), IN_TAIL_MAG),
        loss.scatterMag(),
        loss.slopeXMag(),
        loss.slopeYMag(),
        loss.frames(),
        loss.fallMag());
  }
}
