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
 */
public record SceneEvidence(
    List<FrameEvidence> frames, List<Integer> places, SceneSky sky, Optional<HotPixels> hotPixels) {

  /** A scene without hot pixels. */
  public SceneEvidence(List<FrameEvidence> frames, List<Integer> places, SceneSky sky) {
    this(frames, places, sky, Optional.empty());
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
  }
}
