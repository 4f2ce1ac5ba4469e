package rondure.crew;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rondure.base.Orientation;
import rondure.intake.ImageFormat;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

/** Small crews that run {@link TroubleTasks}, and what they make of a list of files. */
final class CrewFixture {
  /** Time for one of the small test frames, s. */
  static final int TIMEOUT_SECONDS = 20;

  static final Keeper NOTHING_KEPT = (job, digest, measurement) -> {};

  private CrewFixture() {}

  static CrewSettings settings(int workers) {
    CrewSettings usual = CrewSettings.defaults();
    return new CrewSettings(
        workers, 0, TIMEOUT_SECONDS, 1, TroubleTasks.class.getName(), usual.javaExecutable());
  }

  static List<MeasureJob> jobs(Path folder, String... names) {
    return Arrays.stream(names).map(n -> new MeasureJob(folder.resolve(n), smallFacts())).toList();
  }

  static ShotFacts smallFacts() {
    return facts(100, 100);
  }

  static ShotFacts facts(int widthPx, int heightPx) {
    ShotFacts none = ShotFacts.unknown(ImageFormat.TIFF);
    return new ShotFacts(
        none.format(),
        widthPx,
        heightPx,
        Orientation.NORMAL,
        none.captureTime(),
        none.exposureSeconds(),
        none.fNumber(),
        none.iso(),
        none.focalLengthMm(),
        none.focalLength35Mm(),
        none.pixelPitchMicrons(),
        none.ambientTemperatureC(),
        none.cameraModel(),
        none.lensModel(),
        none.composite());
  }

  /** All outcomes, one line each: "done" or the reason. Fails unless they arrive in order. */
  static List<String> reasons(Crew crew, List<MeasureJob> jobs)
      throws CrewProblem, InterruptedException {
    return outcomes(crew, jobs).stream().map(CrewFixture::line).toList();
  }

  static List<Outcome<FrameMeasurement>> outcomes(Crew crew, List<MeasureJob> jobs)
      throws CrewProblem, InterruptedException {
    List<Outcome<FrameMeasurement>> outcomes = new ArrayList<>();
    Thread caller = Thread.currentThread();
    crew.measure(
        jobs,
        StarSettings.defaults(),
        CrewFixture.NOTHING_KEPT,
        (index, outcome) -> {
          if (index != outcomes.size() || Thread.currentThread() != caller) {
            throw new AssertionError("outcome " + index + " out of turn");
          }
          outcomes.add(outcome);
        });
    return outcomes;
  }

  private static String line(Outcome<FrameMeasurement> outcome) {
    return outcome instanceof Outcome.Failed<FrameMeasurement> failed ? failed.reason() : "done";
  }
}
