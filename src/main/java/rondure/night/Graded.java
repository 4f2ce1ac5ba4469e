package rondure.night;

import java.util.List;
import java.util.Optional;

/**
 * What to do with a frame, and why.
 *
 * @param grade the grade
 * @param why the reasons that decided, the weightiest first; never empty
 */
public record Graded(Grade grade, List<Why> why) {
  public Graded {
    why = List.copyOf(why);
    if (why.isEmpty()) {
      throw new IllegalArgumentException("a grade needs a reason");
    }
  }

  /**
   * One reason.
   *
   * @param reason which
   * @param value what was measured, in the reason's unit, where it has a number
   * @param limit what it was held against
   */
  public record Why(GradeReason reason, Optional<Double> value, Optional<Double> limit) {
    static Why of(GradeReason reason) {
      return new Why(reason, Optional.empty(), Optional.empty());
    }

    static Why of(GradeReason reason, double value, double limit) {
      return new Why(reason, Optional.of(value), Optional.of(limit));
    }
  }
}
