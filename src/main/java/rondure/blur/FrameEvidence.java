package rondure.blur;

import java.util.Objects;
import java.util.Optional;
import rondure.stars.StarField;

/**
 * What is known about one frame when its softness is judged.
 *
 * @param field its stars, static detections left out
 * @param exposureSeconds nominal exposure time
 * @param focalLengthPx focal length over pixel pitch
 * @param diffractionFwhmPx width of the Airy disc of its aperture
 * @param gain light gathered per star, relative: exposure seconds times ISO over the square of the
 *     f-number
 * @param developed true for 8-bit files: widths are approximate
 * @param scene what the other frames of its scene show
 */
public record FrameEvidence(
    StarField field,
    Optional<Double> exposureSeconds,
    Optional<Double> focalLengthPx,
    Optional<Double> diffractionFwhmPx,
    Optional<Double> gain,
    boolean developed,
    SceneReference scene) {
  public FrameEvidence {
    Objects.requireNonNull(field, "field");
    Objects.requireNonNull(exposureSeconds, "exposureSeconds");
    Objects.requireNonNull(focalLengthPx, "focalLengthPx");
    Objects.requireNonNull(diffractionFwhmPx, "diffractionFwhmPx");
    Objects.requireNonNull(gain, "gain");
    Objects.requireNonNull(scene, "scene");
  }

  /** The same where the sky's motion is known from the scene and need not be guessed from facts. */
  FrameEvidence withoutExposure() {
    return new FrameEvidence(
        field, Optional.empty(), focalLengthPx, diffractionFwhmPx, gain, developed, scene);
  }

  /** The same with other stars. */
  FrameEvidence with(StarField other) {
    return new FrameEvidence(
        other, exposureSeconds, focalLengthPx, diffractionFwhmPx, gain, developed, scene);
  }
}
