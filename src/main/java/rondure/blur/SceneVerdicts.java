package rondure.blur;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What is said about the frames of a scene.
 *
 * @param frames one for each frame, in order
 * @param explainedShare share of the tensors' variation over frames and field, beyond their
 *     measuring errors, that the budget explains (chi²), 0 to 1
 */
public record SceneVerdicts(List<Judged> frames, Optional<Double> explainedShare) {
  public SceneVerdicts {
    frames = List.copyOf(frames);
    Objects.requireNonNull(explainedShare, "explainedShare");
  }
}
