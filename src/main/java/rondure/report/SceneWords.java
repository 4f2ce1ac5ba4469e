package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.report.layout.Wording;
import rondure.sky.Camera;

/** What the stars of a scene told about its aim and its lens, in sentences. */
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
    solution
        .centreDeclinationDeg()
        .ifPresent(
            d ->
                sentences.add(
                    words.say("scene.aim", "declination", Figures.fixed(0, d).replace('-', '−'))));
    if (solution.calibrated()) {
      solution.camera().ifPresent(camera -> sentences.add(lens(camera, words)));
    }
    solution
        .explainedShare()
        .ifPresent(
            share ->
                sentences.add(
                    words.say(
                        "scene.explained",
                        "explained",
                        Figures.percent(Math.min(MOST_EXPLAINED, share)))));
    return sentences;
  }

  private static String lens(Camera camera, Wording words) {
    return words.say(
        "scene.lens." + camera.projection(), "focalPx", Figures.fixed(0, camera.focalLengthPx()));
  }
}
