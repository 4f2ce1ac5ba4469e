package rondure.blur;

import java.util.List;
import java.util.Objects;
import rondure.sky.SceneSky;

/**
 * What is known about the measured frames of one scene when their softness is judged.
 *
 * @param frames the frames with enough stars, in time order
 * @param places place of each of them among the scene's frames, as {@code sky} counts them
 * @param sky how the stars move over the scene
 */
public record SceneEvidence(List<FrameEvidence> frames, List<Integer> places, SceneSky sky) {
  public SceneEvidence {
    frames = List.copyOf(frames);
    places = List.copyOf(places);
    Objects.requireNonNull(sky, "sky");
    if (places.size() != frames.size()) {
      throw new IllegalArgumentException(
          places.size() + " places for " + frames.size() + " frames");
    }
  }
}
