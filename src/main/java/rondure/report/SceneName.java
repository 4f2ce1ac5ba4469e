package rondure.report;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rondure.intake.CaptureTime;
import rondure.night.NightBook;
import rondure.night.Scene;

/**
 * The name of a scene for people: "Scene 2, 23:10, 24 mm, 35° from the south pole". What is not
 * known is left out; a set of several nights has the date too.
 */
final class SceneName {
  /** A pole that may be farther off than this says too little of the aim. */
  private static final double MOST_POLE_ERROR_DEG = 5;

  private SceneName() {}

  static String of(NightBook book, Scene scene) {
    List<String> parts = new ArrayList<>(List.of("Scene " + scene.number()));
    String date = book.nights().size() > 1 ? "yyyy-MM-dd " : "";
    start(book, scene)
        .map(DateTimeFormatter.ofPattern(date + "HH:mm", Locale.ROOT)::format)
        .ifPresent(parts::add);
    scene.focalLengthMm().ifPresent(length -> parts.add(Figures.plain(1, length) + " mm"));
    aim(scene).ifPresent(parts::add);
    return String.join(", ", parts);
  }

  private static Optional<LocalDateTime> start(NightBook book, Scene scene) {
    return scene.frames().stream()
        .flatMap(index -> book.frames().get(index).facts().captureTime().stream())
        .map(CaptureTime::local)
        .findFirst();
  }

  private static Optional<String> aim(Scene scene) {
    boolean vague =
        scene.solution().poleErrorDeg().filter(e -> e > MOST_POLE_ERROR_DEG).isPresent();
    return scene
        .solution()
        .centreDeclinationDeg()
        .filter(declination -> !vague)
        .map(
            declination ->
                Figures.fixed(0, 90 - Math.abs(declination))
                    + "° from the "
                    + (declination < 0 ? "south" : "north")
                    + " pole");
  }
}
