package rondure.blur;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What is said about the frames of a scene.
 *
 * @param frames one for each frame, in order
 * @param shared what the budget found the frames to have in common, where there is a budget
 */
public record SceneVerdicts(List<Judged> frames, Optional<SceneBudget.Shared> shared) {
  public SceneVerdicts {
    frames = List.copyOf(frames);
    Objects.requireNonNull(shared, "shared");
  }
}
