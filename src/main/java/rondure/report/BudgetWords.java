package rondure.report;

import java.util.List;
import rondure.blur.Terms;
import rondure.report.layout.Wording;
import rondure.report.picture.BudgetPart;

/** The parts of a blur budget in one line, the core first, then the largest. */
final class BudgetWords {
  private BudgetWords() {}

  /** With their shares. */
  static String shares(Terms terms, Wording words) {
    return joined(terms, words, "budget.share");
  }

  /** With their shares and second moments, px². */
  static String terms(Terms terms, Wording words) {
    return joined(terms, words, "budget.term");
  }

  private static String joined(Terms terms, Wording words, String key) {
    List<String> parts =
        BudgetPart.of(terms).stream()
            .map(
                part ->
                    words.say(
                        key,
                        "name",
                        words.say(part.key()),
                        "percent",
                        Figures.percent(part.share()),
                        "value",
                        Figures.fixed(2, part.px2())))
            .toList();
    return String.join("; ", parts);
  }
}
