package rondure.blur;

import java.util.Objects;
import java.util.Optional;

/**
 * What is said about one frame.
 *
 * @param verdict the cause and how sure it is
 * @param budget the blur shared out, where the scene allows it
 */
public record Judged(Verdict verdict, Optional<Budget> budget) {
  public Judged {
    Objects.requireNonNull(verdict, "verdict");
    Objects.requireNonNull(budget, "budget");
  }
}
