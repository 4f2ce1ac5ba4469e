package rondure.blur;

import java.util.Objects;
import java.util.Optional;

/**
 * One frame's blur, shared out by the sky's known motion and the scene's lens.
 *
 * @param byLens the budget, by each lens that may explain it, if the scene's core is the lens and
 *     sensor at their best
 * @param byLensIfDefocused the same if every frame of the scene is out of focus; empty where the
 *     core leaves no room for that
 * @param meanDiscPx signed diameter of the field-mean disc, its sign shared with the other frames'
 *     where the lens tells it
 * @param meanDiscErrorPx standard error
 * @param smear what all stars are stretched alike besides the sky's trail
 * @param tradeablePx2 how much of the focus and tripod terms could be the other's: round widening
 *     that nothing attributes but the frames before and after
 * @param skyProbability that what is booked as the sky's trail is not the tripod's; 1 where the
 *     facts tell how long the shutter was open
 */
public record FrameBudget(
    Rivals byLens,
    Optional<Rivals> byLensIfDefocused,
    double meanDiscPx,
    double meanDiscErrorPx,
    UniformSmear smear,
    double tradeablePx2,
    double skyProbability) {
  public FrameBudget {
    Objects.requireNonNull(byLens, "byLens");
    Objects.requireNonNull(byLensIfDefocused, "byLensIfDefocused");
    Objects.requireNonNull(smear, "smear");
    if (!(skyProbability >= 0 && skyProbability <= 1)) {
      throw new IllegalArgumentException("skyProbability must be in [0, 1], was " + skyProbability);
    }
  }

  /**
   * The budget, by the likeliest lens, if the scene's core is the lens and sensor at their best.
   */
  public Budget ifCoreReal() {
    return byLens.likeliest();
  }

  /** The same if every frame of the scene is out of focus. */
  public Optional<Budget> ifDefocused() {
    return byLensIfDefocused.map(Rivals::likeliest);
  }

  /** By each lens, under the likelier of both assumptions. */
  Rivals likelierLenses(CoreReading core) {
    return core.realProbability() >= 0.5 ? byLens : byLensIfDefocused.orElse(byLens);
  }

  /** The budget of the likelier of both. */
  public Budget likelier(CoreReading core) {
    return likelierLenses(core).likeliest();
  }
}
