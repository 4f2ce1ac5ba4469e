package rondure.report.sidecar;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.base.Moments;
import rondure.blur.Cause;
import rondure.blur.Verdict;
import rondure.intake.FoundFile;
import rondure.intake.ImageFormat;
import rondure.intake.ShotFacts;
import rondure.night.FrameShape;
import rondure.night.FrameStatus;
import rondure.night.Grade;
import rondure.night.GradeReason;
import rondure.night.Graded;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.sky.SceneSky;

/** A folder of invented pictures with grades; the first of equal ones is the sharpest. */
final class GradedNight {
  private static final FileTime LONG_AGO = FileTime.fromMillis(1_000_000_000_000L);

  private final Path folder;
  private final List<FoundFile> files = new ArrayList<>();
  private final List<NightFrame> frames = new ArrayList<>();

  GradedNight(Path folder) {
    this.folder = folder;
  }

  /** A frame with its copies, of one cause. */
  GradedNight frame(Grade grade, Cause cause, String file, String... copies) throws IOException {
    return add(Optional.ofNullable(grade), Optional.of(cause), file, copies);
  }

  GradedNight frame(Grade grade, String file, String... copies) throws IOException {
    return frame(grade, Cause.FOCUS, file, copies);
  }

  GradedNight undecided(Grade grade, String file) throws IOException {
    return add(Optional.of(grade), Optional.empty(), file);
  }

  private GradedNight add(
      Optional<Grade> grade, Optional<Cause> cause, String file, String... copies)
      throws IOException {
    picture(file);
    for (String copy : copies) {
      picture(copy);
    }
    double width = 2 + 0.1 * frames.size();
    frames.add(
        new NightFrame(
            file,
            List.of(copies),
            "camera 1",
            Optional.of(1),
            Optional.of(1),
            ShotFacts.unknown(ImageFormat.RAW),
            FrameStatus.MEASURED,
            Optional.empty(),
            Optional.empty(),
            Optional.of(shape(width)),
            Optional.of(verdict(cause)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            grade.map(GradedNight::graded),
            Optional.empty()));
    return this;
  }

  private static Graded graded(Grade grade) {
    return new Graded(
        grade,
        List.of(new Graded.Why(GradeReason.OUT_OF_FOCUS, Optional.empty(), Optional.empty())));
  }

  private void picture(String name) throws IOException {
    Path path = folder.resolve(name);
    Files.createDirectories(path.getParent());
    if (!Files.exists(path)) {
      Files.writeString(path, "pixels of " + name);
      Files.setLastModifiedTime(path, LONG_AGO);
    }
    files.add(new FoundFile(path, name, format(name)));
  }

  private static ImageFormat format(String name) {
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return switch (ending) {
      case "nef", "cr2", "dng" -> ImageFormat.RAW;
      case "tif" -> ImageFormat.TIFF;
      default -> ImageFormat.JPEG;
    };
  }

  private static FrameShape shape(double fwhmPx) {
    return new FrameShape(
        50,
        fwhmPx,
        Optional.empty(),
        fwhmPx / 2.3548,
        0.95,
        Moments.round(1),
        0,
        0,
        Optional.empty(),
        Optional.empty(),
        0.1);
  }

  private static Verdict verdict(Optional<Cause> cause) {
    Map<Cause, Double> odds = new EnumMap<>(Cause.class);
    for (Cause each : Cause.values()) {
      odds.put(each, cause.isEmpty() ? 1.0 / 6 : each == cause.get() ? 0.9 : 0.02);
    }
    return Verdict.of(odds, List.of());
  }

  NightBook book() {
    SceneSolution sky =
        new SceneSolution(
            SceneSky.Finding.NO_MATCH,
            0,
            Optional.empty(),
            false,
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty());
    List<Integer> all = IntStream.range(0, frames.size()).boxed().toList();
    Scene scene = new Scene(1, 1, "camera 1", Optional.empty(), all, Optional.of(2.0), sky);
    return new NightBook(
        "night",
        List.of(),
        List.of(scene),
        frames,
        Map.of(),
        Map.of(),
        List.of(),
        List.of(),
        List.of());
  }

  List<FoundFile> files() {
    return files;
  }

  /** Writes the sidecars next to the pictures. */
  SidecarSummary beside() throws IOException {
    return beside(false);
  }

  SidecarSummary beside(boolean replaceRatings) throws IOException {
    Sidecars sidecars =
        new Sidecars(book(), files, new SidecarSettings(false, true, replaceRatings, false));
    sidecars.writeBeside();
    return sidecars.summary();
  }
}
