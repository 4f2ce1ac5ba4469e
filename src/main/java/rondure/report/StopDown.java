package rondure.report;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import rondure.blur.Budget;
import rondure.blur.Terms;
import rondure.intake.ShotFacts;
import rondure.report.layout.Wording;

/**
 * Whether stopping down would help, from the budget alone: it works on what the lens adds, and on
 * defocus, whose disc δz/N shrinks with each stop so that its px² halve (geometric optics). It does
 * nothing for what moves.
 */
final class StopDown {
  /** Below this share of the edges' blur the lens is not what softens them. */
  private static final double WORTH_IT = 0.25;

  private StopDown() {}

  /** Whether it would help; empty where there is no budget or no f-number. */
  static Optional<String> sentence(SceneFigures figures, Wording words) {
    boolean worthIt =
        figures.share(Budget::edge, Terms::lensPx2).filter(edge -> edge >= WORTH_IT).isPresent();
    return say(worthIt ? "stopDown.yes" : "stopDown.no", figures, words);
  }

  /** What to do where the lens softened frames. */
  static Optional<AdvicePoint> advice(SceneFigures figures, Wording words) {
    return values(figures).map(values -> AdvicePoint.of(words, "advice.stopDown", values));
  }

  private static Optional<String> say(String key, SceneFigures figures, Wording words) {
    return values(figures).map(values -> words.say(key, values));
  }

  private static Optional<String[]> values(SceneFigures figures) {
    Optional<Double> fNumber = figures.usual(ShotFacts::fNumber);
    Optional<Double> edge = figures.share(Budget::edge, Terms::lensPx2);
    if (fNumber.isEmpty() || edge.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new String[] {
          "from",
          Figures.plain(1, fNumber.get()),
          "to",
          Figures.plain(1, fNumber.get() * Math.sqrt(2)),
          "edge",
          Figures.percent(edge.get()),
          "lens",
          percent(figures, Terms::lensPx2),
          "focus",
          percent(figures, Terms::focusPx2),
          "moving",
          percent(figures, StopDown::moving)
        });
  }

  private static double moving(Terms terms) {
    return Math.max(0, terms.trailingPx2() + terms.tripodPx2());
  }

  private static String percent(SceneFigures figures, ToDoubleFunction<Terms> part) {
    return Figures.percent(figures.share(Budget::sky, part).orElse(0.0));
  }
}
