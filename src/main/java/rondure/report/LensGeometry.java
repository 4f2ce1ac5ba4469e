package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.intake.ShotFacts;
import rondure.night.SceneSolution;
import rondure.report.layout.Wording;
import rondure.sky.Camera;
import rondure.sky.Projection;

/** What the stars' paths told of a lens: projection, true focal length, distortion. */
final class LensGeometry {
  /** A corner drawn in or out by less is not seen. */
  private static final double SEEN_DISTORTION = 0.002;

  private final LensSetup setup;
  private final SceneSolution solution;
  private final Wording words;

  LensGeometry(LensSetup setup, Wording words) {
    this.setup = setup;
    this.solution = setup.scene().solution();
    this.words = words;
  }

  /** Empty where no camera is known. */
  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    solution
        .camera()
        .ifPresent(
            camera -> {
              sentences.add(projection(camera));
              trueLength(camera).ifPresent(sentences::add);
              distortion(camera).ifPresent(sentences::add);
            });
    unlikeRectilinear().ifPresent(sentences::add);
    return sentences;
  }

  private String projection(Camera camera) {
    String key =
        solution.calibrated() ? "lens.projection." + camera.projection() : "lens.projection.asTold";
    return words.say(key, "focalPx", Figures.fixed(0, camera.focalLengthPx()));
  }

  /** In mm, beside what the files say. */
  private Optional<String> trueLength(Camera camera) {
    Optional<Double> pitch = setup.figures().usual(ShotFacts::pixelPitchMicrons);
    Optional<Double> told = setup.scene().focalLengthMm();
    if (!solution.calibrated() || pitch.isEmpty() || told.isEmpty()) {
      return Optional.empty();
    }
    double found = camera.focalLengthPx() * pitch.get() / 1000;
    return Optional.of(
        words.say(
            "lens.focalLength",
            "pitch",
            Figures.plain(2, pitch.get()),
            "found",
            Figures.fixed(found < 99.5 ? 1 : 0, found),
            "told",
            Figures.plain(1, told.get())));
  }

  private Optional<String> distortion(Camera camera) {
    if (!solution.calibrated() || camera.k1() == 0 || !camera.sees(0, 0)) {
      return Optional.empty();
    }
    double share = camera.distortionShare(0, 0);
    boolean seen = Math.abs(share) >= SEEN_DISTORTION;
    String way = share < 0 ? "barrel" : "pincushion";
    return Optional.of(
        words.say(
            "lens.distortion." + (seen ? way : "none"),
            "share",
            Figures.plain(1, 100 * Math.abs(share)) + " %"));
  }

  /** How much more a rectilinear lens would miss, where another one was chosen. */
  private Optional<String> unlikeRectilinear() {
    boolean bent =
        solution.camera().map(c -> c.projection() != Projection.RECTILINEAR).orElse(false);
    return solution.projections().stream()
        .filter(score -> solution.calibrated() && bent)
        .filter(score -> score.projection() == Projection.RECTILINEAR)
        .map(score -> Math.sqrt(score.criterion() / solution.projections().get(0).criterion()))
        .findFirst()
        .map(times -> words.say("lens.notStraight", "times", Figures.fixed(1, times)));
  }
}
