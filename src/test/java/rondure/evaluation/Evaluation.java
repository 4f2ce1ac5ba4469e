package rondure.evaluation;

import java.util.ArrayList;
import java.util.List;
import rondure.blur.Attribution;

/** Judges a set of nights in every view. */
final class Evaluation {
  private Evaluation() {}

  static List<Scored> score(List<MeasuredNight> nights, View view, Attribution attribution) {
    List<Scored> scored = new ArrayList<>();
    nights.forEach(night -> scored.addAll(view.score(night, attribution)));
    return scored;
  }

  static String text(List<MeasuredNight> nights, Attribution attribution) {
    StringBuilder text = new StringBuilder();
    for (View view : View.values()) {
      List<Scored> scored = score(nights, view, attribution);
      ScoreTable table = new ScoreTable(scored);
      text.append("== ").append(view).append('\n');
      text.append(table.kinds()).append(table.confusion()).append(table.sizes());
      text.append(new Reliability(scored).table()).append('\n');
    }
    return text.toString();
  }
}
