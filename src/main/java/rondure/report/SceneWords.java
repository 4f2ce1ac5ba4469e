package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.report.layout.Wording;

/** What the stars of a scene told about its aim, in sentences. */
final class SceneWords {
  /** Nobody explains everything. */
  private static final double MOST_EXPLAINED = 0.99;

  private SceneWords() {}

  static List<String> sentences(Scene scene, Wording words) {
    SceneSolution solution = scene.solution();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        words.say(
            "scene.sky." + solution.finding(),
            "registered",
            Integer.toString(solution.registeredFrames()),
            "frames",
            Integer.toString(scene.frames().size())));
    unmatched(scene, words).ifPresent(sentences::add);
    solution.mount().ifPresent(drift -> sentences.add(mount(drift, words)));
    solution
        .centreDeclinationDeg()
        .ifPresent(
            d ->
                sentences.add(
                    words.say("scene.aim", "declination", Figures.fixed(0, d).replace('-', '−'))));
    sentences.add(explained(solution, words));
    return sentences;
  }

  private static String explained(SceneSolution solution, Wording words) {
    return solution
        .explainedShare()
        .map(
            share ->
                words.say(
                    "scene.explained",
                    "explained",
                    Figures.percent(Math.min(MOST_EXPLAINED, share))))
        .orElseGet(() -> words.say("scene.noBudget"));
  }

  /** Of the frames that fit none of the others, where some do. */
  private static Optional<String> unmatched(Scene scene, Wording words) {
    int frames = scene.frames().size();
    int registered = scene.solution().registeredFrames();
    return registered == 0 || registered == frames
        ? Optional.empty()
        : Optional.of(
            words.say(
                "scene.unmatched",
                "missing",
                Integer.toString(frames - registered),
                "frames",
                Integer.toString(frames)));
  }

  private static String mount(SceneSolution.Drift drift, Wording words) {
    int eighth = (int) Math.floor(drift.angleDeg() / 45 + 0.5) % 8;
    return words.say(
        "scene.mount",
        "drift",
        Figures.fixed(1, drift.pxPerMin()),
        "towards",
        words.say("towards." + eighth),
        "axisOff",
        Figures.fixed(1, drift.axisOffDeg()) + "°");
  }
}
