package rondure.blur;

import rondure.stars.StarField;

/** Light that is not lost but lies where a moving camera drew it, outside the measured star. */
final class LightInPath {
  /** Smaller losses are not worth the search. */
  private static final double LEAST_LOSS_MAG = 0.15;

  /** Light in a faint tail, from simulated hands on the shutter: up to so much. */
  private static final double IN_TAIL_MAG = 0.25;

  private LightInPath() {}

  /** The loss without a second image's light; less certain where a tail holds some. */
  static FrameLight.Loss takenOff(FrameLight.Loss loss, StarField field) {
    if (loss.lossMag() < LEAST_LOSS_MAG) {
      return loss;
    }
    double twice =
        DoubleImage.of(field).map(image -> -2.5 * Math.log10(1 - image.fainterShare())).orElse(0.0);
    boolean tail = FaintTail.of(field, FieldShape.of(field)).isPresent();
    return new FrameLight.Loss(
        loss.lossMag() - twice,
        tail ? Math.hypot(loss.errorMag(), IN_TAIL_MAG) : loss.errorMag(),
        loss.scatterMag(),
        loss.slopeXMag(),
        loss.slopeYMag(),
        loss.frames());
  }
}
