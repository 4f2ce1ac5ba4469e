package rondure.report;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import rondure.base.Orientation;
import rondure.base.RobustStats;
import rondure.blur.LensSurface;
import rondure.blur.Verdict;
import rondure.crew.FrameMeasurement;
import rondure.intake.CaptureTime;
import rondure.intake.Fact;
import rondure.intake.ImageFormat;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.FrameCourse;
import rondure.night.FrameShape;
import rondure.night.FrameStatus;
import rondure.night.Grade;
import rondure.night.GradeReason;
import rondure.night.Graded;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.NightSummary;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.night.UseSettings;
import rondure.night.Usefulness;
import rondure.report.FrameFixture.Kind;
import rondure.sky.Camera;
import rondure.sky.SceneSky;

/**
 * Invented nights: what a book of N frames may hold, the same for the same numbers. Frames come in
 * runs of one cause, as on a real night, with every kind of verdict and status in a larger one.
 */
final class BookFixture {
  private static final LocalDateTime START = LocalDateTime.of(2031, 8, 14, 22, 40, 5);
  private static final List<String> ODD_NAMES =
      List.of(
          "card 2/night walk/IMG with spaces 0007.tif",
          "stars 🌌 over the hut.jpg",
          "שביל החלב 12.tif",
          "مجرة 3.tif",
          "x".repeat(200) + ".tif",
          "naïve-Ωmega-Ночь.tif",
          "a<b>&\"c\".tif",
          "bell\u0007 half\uD83C pair.tif");

  private BookFixture() {}

  /** A night of one scene for small numbers, two scenes beyond 30 frames, two nights beyond 100. */
  static NightBook night(int frameCount) {
    return night(frameCount, false);
  }

  /** The same, some of its frames upright or all of them. */
  static NightBook night(int frameCount, boolean allUpright) {
    Random random = new Random(4711 + frameCount);
    List<NightFrame> frames = new ArrayList<>();
    for (int i = 0; i < frameCount; i++) {
      frames.add(frame(i, frameCount, random, allUpright));
    }
    return book("Hollow Ridge, new moon", frames);
  }

  /** A night with the given frames, scenes and nights worked out from them. */
  static NightBook book(String inputName, List<NightFrame> frames) {
    Map<Integer, List<Integer>> byScene = new TreeMap<>();
    for (int i = 0; i < frames.size(); i++) {
      int position = i;
      frames
          .get(i)
          .sceneNumber()
          .ifPresent(s -> byScene.computeIfAbsent(s, key -> new ArrayList<>()).add(position));
    }
    List<Scene> scenes = new ArrayList<>();
    byScene.forEach((number, members) -> scenes.add(scene(number, members, frames)));
    List<NightSummary> nights = new ArrayList<>();
    frames.stream()
        .flatMap(frame -> frame.nightIndex().stream())
        .distinct()
        .sorted()
        .forEach(index -> nights.add(summary(index, frames)));
    return new NightBook(
        inputName,
        nights,
        scenes,
        frames,
        frames.size() > 10
            ? Map.of(
                "video", List.of("a.mp4"), "sidecar", List.of("a.thm", "b.thm", "c.thm", "d.thm"))
            : Map.of(),
        frames.size() > 10 ? Map.of(1, 37) : Map.of(),
        frames.size() > 10 ? events() : List.of(),
        List.of(),
        List.of());
  }

  /** One event of each kind. */
  private static List<Event> events() {
    Map<String, Double> sizes = new HashMap<>();
    for (String name :
        List.of(
            "jumpPx",
            "wideningRatio",
            "frameCount",
            "driftPxPerMin",
            "angleDeg",
            "growthPercentPerHour",
            "widthRatio",
            "lostMag",
            "brighterMag",
            "exposureBeforeSeconds",
            "exposureAfterSeconds",
            "fNumberBefore",
            "fNumberAfter")) {
      sizes.put(name, 2.4);
    }
    List<Event> events = new ArrayList<>();
    for (EventKind kind : EventKind.values()) {
      int first = kind.ordinal() % 8;
      events.add(new Event(kind, 1, first, first + kind.ordinal() % 3, new TreeMap<>(sizes)));
    }
    sizes.put("growthPercentPerDegree", 1.5);
    events.add(new Event(EventKind.FOCUS_CREEP, 1, 0, 9, new TreeMap<>(sizes)));
    return events;
  }

  private static Scene scene(int number, List<Integer> members, List<NightFrame> frames) {
    double[] widths =
        members.stream()
            .map(frames::get)
            .flatMap(frame -> frame.shape().stream())
            .mapToDouble(FrameShape::fwhmPx)
            .toArray();
    NightFrame first = frames.get(members.get(0));
    return new Scene(
        number,
        first.nightIndex().orElse(1),
        first.cameraName(),
        first.facts().focalLengthMm().map(Fact::value),
        members,
        widths.length == 0 ? Optional.empty() : Optional.of(RobustStats.percentile(0.1, widths)),
        new SceneSolution(
            SceneSky.Finding.SKY_TURNS,
            members.size(),
            Optional.of(Camera.rectilinear(4012.5, 6000, 4000)),
            true,
            Optional.of(-12.5),
            Optional.of(0.04),
            List.of(),
            Optional.empty(),
            Optional.of(0.968),
            Optional.of(LensFixture.shared(new LensSurface(0.9, -0.4, 1.2, 0.6, 0.8)))));
  }

  /** The same night where core and lens are not known. */
  static NightBook withoutLens(NightBook book) {
    return new NightBook(
        book.inputName(),
        book.nights(),
        book.scenes().stream().map(BookFixture::withoutLens).toList(),
        book.frames(),
        book.leftOut(),
        book.staticDetections(),
        book.events(),
        book.focusSeries(),
        book.notes());
  }

  private static Scene withoutLens(Scene scene) {
    SceneSolution known = scene.solution();
    return new Scene(
        scene.number(),
        scene.nightIndex(),
        scene.cameraName(),
        scene.focalLengthMm(),
        scene.frames(),
        scene.sharpestFwhmPx(),
        new SceneSolution(
            known.finding(),
            known.registeredFrames(),
            known.camera(),
            known.calibrated(),
            known.centreDeclinationDeg(),
            known.poleErrorDeg(),
            known.projections(),
            known.mount(),
            Optional.empty()));
  }

  private static NightSummary summary(int index, List<NightFrame> frames) {
    List<NightFrame> members =
        frames.stream().filter(f -> f.nightIndex().orElse(0) == index).toList();
    List<CaptureTime> times =
        members.stream().flatMap(f -> f.facts().captureTime().stream()).toList();
    return new NightSummary(
        index,
        times.stream().findFirst(),
        times.isEmpty() ? Optional.empty() : Optional.of(times.get(times.size() - 1)),
        members.stream().map(f -> f.sceneNumber().orElse(1)).distinct().sorted().toList(),
        members.size(),
        (int) members.stream().filter(f -> f.status() == FrameStatus.MEASURED).count(),
        (int) members.stream().filter(Ranking::isKeep).count());
  }

  private static NightFrame frame(int i, int frameCount, Random random, boolean upright) {
    Kind kind = kind(i, frameCount, random);
    FrameStatus status = status(i, frameCount);
    boolean withFacts = frameCount < 12 || i % 17 != 11;
    Orientation orientation =
        upright || (frameCount >= 12 && i % 19 == 7)
            ? Orientation.ROTATED_90_CW
            : Orientation.NORMAL;
    boolean secondScene = frameCount > 30 && i >= frameCount * 2 / 3;
    boolean secondNight = frameCount > 100 && i >= frameCount * 2 / 3;
    LocalDateTime time =
        START.plusSeconds(26L * i + (secondScene ? 900 : 0) + (secondNight ? 86_400 : 0));
    ShotFacts facts = facts(withFacts, orientation, time, secondScene ? 35 : 24);
    String file =
        frameCount >= 24 && i % 3 == 1 && i / 3 < ODD_NAMES.size()
            ? ODD_NAMES.get(i / 3)
            : String.format("HR%04d.tif", 1201 + i);
    return assembled(
        file, kind, status, facts, secondScene ? 2 : 1, secondNight ? 2 : 1, random, i);
  }

  private static NightFrame assembled(
      String file,
      Kind kind,
      FrameStatus status,
      ShotFacts facts,
      int scene,
      int night,
      Random random,
      int i) {
    boolean inNight = status == FrameStatus.MEASURED || status == FrameStatus.TOO_FEW_STARS;
    Optional<Double> trail = facts.exposureSeconds().map(exposure -> 4.5 + 0.02 * (i % 5));
    FrameFixture made = new FrameFixture(kind, facts, random);
    boolean measured = status == FrameStatus.MEASURED;
    FrameShape shape = made.shape();
    boolean keep = measured && kind == Kind.SHARP && shape.roundness() >= 0.8;
    return new NightFrame(
        file,
        i % 6 == 0 ? List.of(file.replace(".tif", ".jpg")) : List.of(),
        "Lumen A1",
        inNight ? Optional.of(scene) : Optional.empty(),
        inNight ? Optional.of(night) : Optional.empty(),
        facts,
        status,
        reason(status),
        measured ? trail : Optional.empty(),
        measured ? Optional.of(shape) : Optional.empty(),
        measured ? Optional.of(made.verdict(trail)) : Optional.empty(),
        measured ? Optional.of(made.budget()) : Optional.empty(),
        measured ? Optional.of(i % 7 == 3 ? FrameCourse.UNKNOWN : steady()) : Optional.empty(),
        measured
            ? Optional.of(Usefulness.of(made.field(), facts.orientation(), UseSettings.defaults()))
            : Optional.empty(),
        measured ? Optional.of(graded(keep)) : Optional.empty(),
        status == FrameStatus.UNREADABLE
            ? Optional.empty()
            : Optional.of(
                new FrameMeasurement(
                    facts, Linearity.ASSUMED, made.field(), ThumbnailFixture.night(facts, i))));
  }

  /** Of a camera that nobody touched. */
  private static FrameCourse steady() {
    return new FrameCourse(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(0.0),
        Optional.of(0.0),
        Optional.empty());
  }

  /** The same frame, to look at more closely because it is wider than the best. */
  static NightFrame notKept(NightFrame frame) {
    return with(
        frame, frame.verdict(), frame.course(), Optional.of(graded(false)), frame.measurement());
  }

  /** The same frame with another course. */
  static NightFrame withCourse(NightFrame frame, FrameCourse course) {
    return with(frame, frame.verdict(), Optional.of(course), frame.graded(), frame.measurement());
  }

  /** The same frame with another verdict. */
  static NightFrame withVerdict(NightFrame frame, Verdict verdict) {
    return with(frame, Optional.of(verdict), frame.course(), frame.graded(), frame.measurement());
  }

  /** The same frame with another verdict, grade and measurement. */
  static NightFrame with(
      NightFrame frame,
      Optional<Verdict> verdict,
      Optional<Graded> graded,
      Optional<FrameMeasurement> measurement) {
    return with(frame, verdict, frame.course(), graded, measurement);
  }

  private static NightFrame with(
      NightFrame frame,
      Optional<Verdict> verdict,
      Optional<FrameCourse> course,
      Optional<Graded> graded,
      Optional<FrameMeasurement> measurement) {
    return new NightFrame(
        frame.file(),
        frame.copies(),
        frame.cameraName(),
        frame.sceneNumber(),
        frame.nightIndex(),
        frame.facts(),
        frame.status(),
        frame.reason(),
        frame.trailPredictedPx(),
        frame.shape(),
        verdict,
        frame.budget(),
        course,
        frame.usefulness(),
        graded,
        measurement);
  }

  /** A grade with a reason. */
  static Graded graded(boolean keep) {
    Graded.Why why =
        new Graded.Why(
            keep ? GradeReason.TIGHT : GradeReason.WIDER,
            Optional.of(keep ? 1.05 : 1.4),
            Optional.of(1.25));
    return new Graded(keep ? Grade.KEEP : Grade.LOOK_CLOSER, List.of(why));
  }

  private static Kind kind(int i, int frameCount, Random random) {
    if (frameCount <= 2) {
      return i == 0 ? Kind.TRAILED : Kind.SHARP;
    }
    double part = (double) i / frameCount;
    if (part < 0.06 || random.nextDouble() < 0.05) {
      return Kind.DEFOCUSED;
    }
    if (part > 0.30 && part < 0.40) {
      return Kind.SHAKEN;
    }
    if (part > 0.50 && part < 0.60) {
      return Kind.UNDECIDED;
    }
    if (part > 0.72 && part < 0.82) {
      return Kind.TRAILED;
    }
    if (part > 0.93) {
      return Kind.HAZY;
    }
    return random.nextDouble() < 0.1 ? Kind.SOFT_EDGES : Kind.SHARP;
  }

  private static FrameStatus status(int i, int frameCount) {
    if (frameCount < 12) {
      return FrameStatus.MEASURED;
    }
    return switch (i % 40) {
      case 9, 33 -> FrameStatus.TOO_FEW_STARS;
      case 10 -> FrameStatus.UNREADABLE;
      case 21 -> FrameStatus.NOT_NIGHT;
      case 36 -> FrameStatus.COMPOSITE;
      case 37 -> FrameStatus.TRAILS_INTENDED;
      default -> FrameStatus.MEASURED;
    };
  }

  private static Optional<String> reason(FrameStatus status) {
    return switch (status) {
      case MEASURED -> Optional.empty();
      case TOO_FEW_STARS ->
          Optional.of(
              "Only 3 stars could be measured and 8 are needed; cloud or a cap may be why.");
      case NOT_NIGHT -> Optional.of("The picture is as bright as day.");
      case TRAILS_INTENDED -> Optional.of("Exposed for 1,800 s, so the trails are meant.");
      case COMPOSITE -> Optional.of("The file says it is a panorama.");
      case UNREADABLE ->
          Optional.of("6000 x 4000 px need 48000000 bytes, file holds 36225024; copy it again.");
    };
  }

  private static ShotFacts facts(
      boolean known, Orientation orientation, LocalDateTime time, double focalLengthMm) {
    if (!known) {
      ShotFacts bare = ShotFacts.unknown(ImageFormat.TIFF);
      return new ShotFacts(
          ImageFormat.TIFF,
          6000,
          4000,
          orientation,
          bare.captureTime(),
          bare.exposureSeconds(),
          bare.fNumber(),
          bare.iso(),
          bare.focalLengthMm(),
          bare.focalLength35Mm(),
          bare.pixelPitchMicrons(),
          bare.ambientTemperatureC(),
          bare.cameraModel(),
          bare.lensModel(),
          false);
    }
    return new ShotFacts(
        ImageFormat.TIFF,
        6000,
        4000,
        orientation,
        Optional.of(new CaptureTime(time, OptionalInt.empty(), false, Fact.Source.FILE)),
        file(15),
        file(2.8),
        file(3200),
        file(focalLengthMm),
        Optional.empty(),
        Optional.of(new Fact<>(5.98, Fact.Source.DERIVED)),
        Optional.empty(),
        Optional.of(new Fact<>("Lumen A1", Fact.Source.FILE)),
        Optional.of(new Fact<>("Lumen 24 mm f/1.8", Fact.Source.FILE)),
        false);
  }

  private static Optional<Fact<Double>> file(double value) {
    return Optional.of(new Fact<>(value, Fact.Source.FILE));
  }
}
