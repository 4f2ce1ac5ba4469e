package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rondure.intake.Fact;
import rondure.night.NightFrame;
import rondure.night.Scene;

/** The trail that a scene's exposures can give, a sentence for each exposure. */
record SceneTrails(ReportContext context) {
  /** Of more exposures only the shortest and the longest are named. */
  private static final int MOST_OF_SCENE = 3;

  /** Shorter trails are told as nothing: 0.0 px. */
  private static final double LEAST_PX = 0.05;

  /** Shortest exposure first. */
  List<String> lines(Scene scene) {
    Map<Double, Double> trailPx = new TreeMap<>();
    for (NightFrame frame : Ranking.bestFirst(context.book(), scene)) {
      Optional<Double> seconds = frame.facts().exposureSeconds().map(Fact::value);
      Optional<Double> seen = frame.trailPredictedPx().filter(px -> px >= LEAST_PX);
      seconds.ifPresent(s -> seen.ifPresent(px -> trailPx.put(s, px)));
    }
    List<Double> exposures = List.copyOf(trailPx.keySet());
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < exposures.size(); i++) {
      if (exposures.size() <= MOST_OF_SCENE || i % (exposures.size() - 1) == 0) {
        lines.add(line(scene, exposures.get(i), trailPx.get(exposures.get(i))));
      }
    }
    return lines;
  }

  private String line(Scene scene, double seconds, double trailPx) {
    return context
        .words()
        .say(
            "course.trail",
            "scene",
            Integer.toString(scene.number()),
            "exposure",
            Figures.exposure(seconds),
            "trail",
            Figures.px(trailPx),
            "share",
            scene.sharpestFwhmPx().map(width -> Figures.fixed(1, trailPx / width)).orElse("?"));
  }
}
