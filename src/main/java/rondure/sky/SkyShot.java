package rondure.sky;

import java.util.Objects;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.stars.StarField;

/**
 * One frame of a scene as registration needs it.
 *
 * @param field its stars, static detections left out
 * @param midSeconds middle of the exposure on a clock shared by the scene
 * @param clockStepSeconds how finely that clock tells the time: 1 without sub-seconds, 0.01 with
 * @param exposureSeconds nominal exposure time
 * @param focalLengthPx focal length over pixel pitch, as the facts give it
 * @param orientation how the stored picture must be turned to stand upright
 */
public record SkyShot(
    StarField field,
    Optional<Double> midSeconds,
    double clockStepSeconds,
    Optional<Double> exposureSeconds,
    Optional<Double> focalLengthPx,
    Orientation orientation) {
  public SkyShot {
    Objects.requireNonNull(field, "field");
    Objects.requireNonNull(midSeconds, "midSeconds");
    Objects.requireNonNull(exposureSeconds, "exposureSeconds");
    Objects.requireNonNull(focalLengthPx, "focalLengthPx");
    Objects.requireNonNull(orientation, "orientation");
    if (!(clockStepSeconds > 0)) {
      throw new IllegalArgumentException("clockStepSeconds must be > 0, was " + clockStepSeconds);
    }
  }
}
