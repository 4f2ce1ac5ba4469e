package rondure.sky;

import java.util.Objects;
import java.util.Optional;
import rondure.stars.StarField;

/**
 * One frame of a scene as the search for static detections needs it.
 *
 * @param field detections of the frame
 * @param midExposureSeconds middle of the exposure, seconds on any clock shared by the scene
 * @param skySpeedPxPerS speed of a star on the celestial equator at the frame's centre, ω f / p:
 *     the largest there
 */
public record SceneFrame(
    StarField field, Optional<Double> midExposureSeconds, Optional<Double> skySpeedPxPerS) {
  public SceneFrame {
    Objects.requireNonNull(field, "field");
    Objects.requireNonNull(midExposureSeconds, "midExposureSeconds");
    Objects.requireNonNull(skySpeedPxPerS, "skySpeedPxPerS");
  }

  /** Motion of an equatorial star from this frame to a later one, px, when the facts tell. */
  Optional<Double> predictedMotionPx(SceneFrame later) {
    if (midExposureSeconds.isEmpty()
        || later.midExposureSeconds.isEmpty()
        || skySpeedPxPerS.isEmpty()) {
      return Optional.empty();
    }
    double seconds = later.midExposureSeconds.get() - midExposureSeconds.get();
    return Optional.of(Math.abs(seconds) * skySpeedPxPerS.get());
  }
}
