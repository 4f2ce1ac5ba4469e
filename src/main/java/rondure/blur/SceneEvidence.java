package rondure.blur;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.sky.HotPixels;
import rondure.sky.SceneSky;

/**
 * What is known about the measured frames of one scene when their softness is judged.
 *
 * @param frames the frames with enough stars, in time order
 * @param places place of each of them among the scene's frames, as {@code sky} counts them
 * @param sky how the stars move over the scene
 * @param hotPixels single photosites that shine by themselves, where there are enough
 * @param standingLamps lights on the ground that stay on the sensor while the stars move
 */
public record SceneEvidence(
    List<FrameEvidence> frames,
    List<Integer> places,
    SceneSky sky,
    Optional<HotPixels> hotPixels,
    int standingLamps) {

  /** A scene without hot pixels and lamps. */
  public SceneEvidence(List<FrameEvidence> frames, List<Integer> places, SceneSky sky) {
    this(frames, places, sky, Optional.empty(), 0);
  }

  public SceneEvidence {
    frames = List.copyOf(frames);
    places = List.copyOf(places);
    Objects.requireNonNull(sky, "sky");
    Objects.requireNonNull(hotPixels, "hotPixels");
    if (places.size() != frames.size()) {
      throw new IllegalArgumentException(
          places.size() + " places for " + frames.size() + " frames");
    }
    if (standingLamps < 0) {
      throw new IllegalArgumentException("standingLamps must be >= 0, were " + standingLamps);
    }
  }
}
