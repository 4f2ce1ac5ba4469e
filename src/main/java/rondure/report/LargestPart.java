package rondure.report;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import rondure.blur.Cause;
import rondure.blur.Terms;
import rondure.night.NightFrame;
import rondure.report.picture.Mark;

/** What adds most to the width of a frame that no cause softened much and that is not kept. */
final class LargestPart {
  private LargestPart() {}

  /** A measured frame with the verdict "none" that is not kept all the same; no focus test. */
  static boolean isSpareable(NightFrame frame) {
    return Ranking.isMeasured(frame)
        && !frame.isFocusTest()
        && Mark.of(frame) == Mark.NONE
        && !Ranking.isKeep(frame);
  }

  /** The cause that makes more than half of what the budget holds beyond the core, px². */
  static Optional<Cause> of(NightFrame frame) {
    return frame
        .budget()
        .map(budget -> budget.sky())
        .flatMap(
            terms ->
                Arrays.stream(Cause.values())
                    .filter(cause -> cause != Cause.NONE)
                    .max(Comparator.comparingDouble((Cause cause) -> terms.of(cause)))
                    .filter(cause -> isMost(terms, cause)));
  }

  private static boolean isMost(Terms terms, Cause cause) {
    double sum = 0;
    for (Cause other : Cause.values()) {
      sum += other == Cause.NONE ? 0 : Math.max(0, terms.of(other));
    }
    return terms.of(cause) > 0 && terms.of(cause) > sum / 2;
  }
}
