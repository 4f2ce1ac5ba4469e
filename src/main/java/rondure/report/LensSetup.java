package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rondure.blur.SceneBudget;
import rondure.intake.Fact;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.stars.StarField;

/**
 * Scenes that share camera, lens, focal length and frame size, whatever the aim and the night.
 *
 * @param scenes at least one, in time order
 * @param frames their measured frames, in time order, at least one
 */
record LensSetup(List<Scene> scenes, List<NightFrame> frames) {
  LensSetup {
    scenes = List.copyOf(scenes);
    frames = List.copyOf(frames);
    if (scenes.isEmpty() || frames.isEmpty()) {
      throw new IllegalArgumentException("a set-up needs a scene and a measured frame");
    }
  }

  /** What scenes must share. */
  private record Key(
      String camera, Optional<String> lens, Optional<Double> focalMm, int widthPx, int heightPx) {

    static Key of(Scene scene, NightFrame frame) {
      StarField field = frame.measurement().orElseThrow().field();
      Optional<Double> tenths = scene.focalLengthMm().map(mm -> Math.rint(mm * 10) / 10);
      Optional<String> lens = frame.facts().lens().map(String::strip);
      return new Key(scene.cameraName(), lens, tenths, field.widthPx(), field.heightPx());
    }
  }

  /** Those of a set, that with most measured frames first. */
  static List<LensSetup> of(NightBook book) {
    Map<Key, List<Scene>> byKey = new LinkedHashMap<>();
    for (Scene scene : book.scenes()) {
      measured(book, scene)
          .findFirst()
          .ifPresent(
              frame ->
                  byKey.computeIfAbsent(Key.of(scene, frame), k -> new ArrayList<>()).add(scene));
    }
    return byKey.values().stream()
        .map(own -> new LensSetup(own, own.stream().flatMap(s -> measured(book, s)).toList()))
        .sorted(Comparator.comparing((LensSetup setup) -> -setup.frames().size()))
        .toList();
  }

  private static Stream<NightFrame> measured(NightBook book, Scene scene) {
    return scene.frames().stream()
        .map(book.frames()::get)
        .filter(Ranking::isMeasured)
        .filter(frame -> frame.measurement().isPresent());
  }

  /** The scene that knows core and lens from most frames; of several the first. */
  private Optional<Scene> best() {
    Map<SceneBudget.Shared, Integer> frames = new LinkedHashMap<>();
    for (Scene scene : scenes) {
      scene
          .solution()
          .shared()
          .ifPresent(s -> frames.merge(s, scene.frames().size(), Integer::sum));
    }
    return scenes.stream()
        .filter(scene -> scene.solution().shared().isPresent())
        .reduce((a, b) -> frames(frames, b) > frames(frames, a) ? b : a);
  }

  private static int frames(Map<SceneBudget.Shared, Integer> frames, Scene scene) {
    return frames.get(scene.solution().shared().orElseThrow());
  }

  /** Core and lens as a budget found them. */
  Optional<SceneBudget.Shared> shared() {
    return best().flatMap(scene -> scene.solution().shared());
  }

  /** The scene whose camera is told of: that of core and lens, else the first that knows one. */
  Scene scene() {
    return best()
        .or(() -> scenes.stream().filter(s -> s.solution().camera().isPresent()).findFirst())
        .orElse(scenes.get(0));
  }

  /** Medians for advice. */
  SceneFigures figures() {
    return new SceneFigures(scene(), frames);
  }

  /** f-number of the widest aperture, for which core and lens are told. */
  Optional<Double> widestFNumber() {
    return fNumbers().min(Comparator.naturalOrder());
  }

  /** f-number of the narrowest aperture. */
  Optional<Double> narrowestFNumber() {
    return fNumbers().max(Comparator.naturalOrder());
  }

  private Stream<Double> fNumbers() {
    return frames.stream()
        .flatMap(frame -> frame.facts().fNumber().stream())
        .map(Fact::value)
        .filter(value -> value > 0);
  }

  int widthPx() {
    return field().widthPx();
  }

  int heightPx() {
    return field().heightPx();
  }

  private StarField field() {
    return frames.get(0).measurement().orElseThrow().field();
  }
}
