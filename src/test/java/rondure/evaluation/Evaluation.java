package rondure.evaluation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rondure.blur.Attribution;

/** Judges a set of nights in every view. */
final class Evaluation {
  private Evaluation() {}

  static List<Scored> score(List<MeasuredNight> nights, View view, Attribution attribution) {
    List<Scored> scored = new ArrayList<>();
    nights.forEach(night -> scored.addAll(view.score(night, attribution)));
    return scored;
  }

  /** Every view's scores. */
  static Map<View, List<Scored>> score(List<MeasuredNight> nights, Attribution attribution) {
    Map<View, List<Scored>> views = new EnumMap<>(View.class);
    for (View view : View.values()) {
      views.put(view, score(nights, view, attribution));
    }
    return views;
  }

  static String text(Map<View, List<Scored>> views) {
    StringBuilder text = new StringBuilder();
    views.forEach(
        (view, scored) -> {
          ScoreTable table = new ScoreTable(scored);
          text.append("== ").append(view).append('\n');
          text.append(table.kinds()).append(table.confusion()).append(table.sizes());
          text.append(new Reliability(scored).table()).append(table.failures()).append('\n');
        });
    return text.toString();
  }
}
