package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.blur.Cause;
import rondure.blur.Terms;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;

/** The terms of a blur budget in one line, px². */
final class BudgetWords {

  /** Terms that round to less are left out. */
  private static final double LEAST_PX2 = 0.005;

  private BudgetWords() {}

  static String terms(Terms terms, Wording words) {
    List<String> parts = new ArrayList<>();
    parts.add(term(words.say("budget.core"), terms.corePx2(), words));
    for (Cause cause : Cause.values()) {
      double px2 = terms.of(cause);
      if (cause != Cause.NONE && px2 >= LEAST_PX2) {
        parts.add(term(words.say("mark." + Mark.of(cause)), px2, words));
      }
    }
    return String.join(", ", parts);
  }

  private static String term(String name, double px2, Wording words) {
    return words.say("budget.term", "name", name, "value", Figures.fixed(2, px2));
  }
}
