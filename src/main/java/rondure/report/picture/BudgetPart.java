package rondure.report.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rondure.blur.Cause;
import rondure.blur.Terms;

/**
 * One part of a blur budget.
 *
 * @param cause whose it is; none for the core, empty for what nothing explains
 * @param px2 second moment
 * @param share of all parts
 */
public record BudgetPart(Optional<Cause> cause, double px2, double share) {
  private static final double LEAST_SHARE = 0.01;

  /** The parts that are worth a word, the core first, then the largest; shares add up to 1. */
  public static List<BudgetPart> of(Terms terms) {
    List<BudgetPart> parts = new ArrayList<>();
    for (Cause cause : Cause.values()) {
      if (cause != Cause.NONE) {
        parts.add(new BudgetPart(Optional.of(cause), terms.of(cause), 0));
      }
    }
    parts.add(new BudgetPart(Optional.empty(), terms.unexplainedPx2(), 0));
    double core = terms.corePx2();
    double all = core + parts.stream().mapToDouble(part -> Math.max(0, part.px2())).sum();
    parts.removeIf(part -> part.px2() < LEAST_SHARE * all);
    parts.sort(Comparator.comparingDouble(BudgetPart::px2).reversed());
    parts.add(0, new BudgetPart(Optional.of(Cause.NONE), core, 0));
    double shown = parts.stream().mapToDouble(BudgetPart::px2).sum();
    return parts.stream().map(p -> new BudgetPart(p.cause(), p.px2(), p.px2() / shown)).toList();
  }

  /** The key of its name. */
  public String key() {
    return cause
        .map(c -> c == Cause.NONE ? "picture.core" : "mark." + Mark.of(c))
        .orElse("picture.unexplained");
  }

  Filling filling() {
    return cause.map(Filling::of).orElse(Filling.OPEN);
  }
}
