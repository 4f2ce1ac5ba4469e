package rondure.evaluation;

import java.util.List;
import java.util.Optional;
import rondure.blur.Budget;
import rondure.blur.Cause;
import rondure.blur.FrameLight;
import rondure.blur.Verdict;
import rondure.night.FrameStatus;
import rondure.night.NightFrame;

/**
 * A frame's truth beside what was said of it.
 *
 * @param night its name
 * @param place in the night, from 0
 * @param answer the truth
 * @param status whether it was measured
 * @param verdict when it was
 * @param budget when there is one
 * @param developed 8-bit file
 * @param tellable false for haze where every frame shown is as hazy, or no file tells what light it
 *     gathered: haze is a loss beside others
 */
record Scored(
    String night,
    int place,
    FrameAnswer answer,
    FrameStatus status,
    Optional<Verdict> verdict,
    Optional<Budget> budget,
    boolean developed,
    boolean tellable) {

  private static final double HAZE_LEAVES = 1 - FrameLight.HAZE_LOSS_SHARE;

  /** How the verdict fits the truth. */
  enum Result {
    RIGHT,
    /** Undecided, the truth among the two. */
    UNDECIDED,
    /** Undecided between two others. */
    ASTRAY,
    WRONG,
    UNMEASURED
  }

  /**
   * @param shown the answers of all frames whose light the program can compare it with
   */
  static Scored of(MeasuredNight night, int place, NightFrame frame, List<FrameAnswer> shown) {
    return new Scored(
        night.name(),
        place,
        night.answers().get(place),
        frame.status(),
        frame.verdict(),
        frame.budget(),
        night.frames().get(place).linearity() == rondure.intake.Linearity.DEVELOPED,
        tellable(night.answers().get(place), shown));
  }

  private static boolean tellable(FrameAnswer answer, List<FrameAnswer> shown) {
    return answer.cause() != Cause.HAZE
        || shown.stream()
            .anyMatch(
                other ->
                    other.cause() != Cause.HAZE
                        || other.transparency() * HAZE_LEAVES >= answer.transparency());
  }

  Result result() {
    if (verdict.isEmpty()) {
      return Result.UNMEASURED;
    }
    Optional<Cause> said = verdict.get().cause();
    if (said.isPresent()) {
      return said.get() == answer.cause() ? Result.RIGHT : Result.WRONG;
    }
    return verdict.get().undecidedBetween().contains(answer.cause())
        ? Result.UNDECIDED
        : Result.ASTRAY;
  }

  /** Sum over causes of (p - o)² (Brier 1950, Monthly Weather Review 78, 1). */
  double brier() {
    double sum = 0;
    for (Cause cause : Cause.values()) {
      double o = cause == answer.cause() ? 1 : 0;
      double p = verdict.orElseThrow().probabilities().get(cause);
      sum += (p - o) * (p - o);
    }
    return sum;
  }
}
