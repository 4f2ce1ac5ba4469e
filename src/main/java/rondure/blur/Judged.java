package rondure.blur;

import java.util.Objects;
import java.util.Optional;

/**
 * What is said about one frame.
 *
 * @param verdict the cause and how sure it is
 * @param budget the blur shared out, where the scene allows it
 * @param loss light that its stars lost, where other frames tell
 */
public record Judged(Verdict verdict, Optional<Budget> budget, Optional<FrameLight.Loss> loss) {
  public Judged {
    Objects.requireNonNull(verdict, "verdict");
    Objects.requireNonNull(budget, "budget");
    Objects.requireNonNull(loss, "loss");
  }
}
