package rondure.intake;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Names the camera of files that say nothing, by the company they keep.
 *
 * <p>Programs strip the metadata from some pictures of a folder and not from others. A file without
 * time and exposure, and without camera or with the same one, is taken for a camera's when all
 * other pictures of its folder that have its size and are not silent come from that camera, at
 * least three of them. It then shares the lens, focal length, aperture and pixel pitch that at
 * least three of them tell and none contradicts. Never time, exposure and sensitivity: those differ
 * from frame to frame.
 */
public final class FolderKin {
  private static final int FEWEST_KIN = 3;

  /** A folder and a size, whichever way the picture is turned. */
  private record Place(String folder, int longerPx, int shorterPx) {
    static Place of(Shot shot) {
      int width = shot.facts().widthPx();
      int height = shot.facts().heightPx();
      return new Place(
          FileNames.folder(shot.file().relativeName()),
          Math.max(width, height),
          Math.min(width, height));
    }
  }

  private final Map<Place, List<ShotFacts>> kin;

  private FolderKin(List<Shot> shots) {
    this.kin =
        shots.stream()
            .filter(shot -> shot.facts().widthPx() > 0 && shot.facts().camera().isPresent())
            .filter(shot -> !silent(shot.facts()))
            .collect(
                Collectors.groupingBy(
                    Place::of, HashMap::new, Collectors.mapping(Shot::facts, Collectors.toList())));
  }

  /** The shots, in the same order, with what silent files share with their folder. */
  public static List<Shot> withCameraOfTheFolder(List<Shot> shots) {
    FolderKin kin = new FolderKin(shots);
    return shots.stream().map(kin::joined).toList();
  }

  /** How many of the shots were given a camera, one sentence for each camera. */
  public static List<String> notes(List<Shot> before, List<Shot> after) {
    Map<String, Integer> counts = new TreeMap<>();
    for (int i = 0; i < before.size(); i++) {
      if (before.get(i).facts().camera().isEmpty()) {
        after.get(i).facts().camera().ifPresent(c -> counts.merge(c, 1, Integer::sum));
      }
    }
    return counts.entrySet().stream()
        .map(
            entry ->
                (entry.getValue() == 1 ? "1 file names" : entry.getValue() + " files name")
                    + " no camera; by folder and size taken for "
                    + entry.getKey()
                    + ", with the lens and pixels of its other frames there.")
        .toList();
  }

  private Shot joined(Shot shot) {
    ShotFacts own = shot.facts();
    List<ShotFacts> others = kin.getOrDefault(Place.of(shot), List.of());
    Set<Optional<String>> cameras = new HashSet<>();
    others.forEach(facts -> cameras.add(facts.camera()));
    own.camera().ifPresent(camera -> cameras.add(Optional.of(camera)));
    return silent(own) && !own.composite() && others.size() >= FEWEST_KIN && cameras.size() == 1
        ? new Shot(shot.file(), joined(own, others))
        : shot;
  }

  private static boolean silent(ShotFacts facts) {
    return facts.captureTime().isEmpty()
        && facts.exposureSeconds().filter(f -> f.source() == Fact.Source.FILE).isEmpty();
  }

  private static ShotFacts joined(ShotFacts own, List<ShotFacts> others) {
    return new ShotFacts(
        own.format(),
        own.widthPx(),
        own.heightPx(),
        own.orientation(),
        own.captureTime(),
        own.exposureSeconds(),
        own.fNumber().or(() -> shared(others, ShotFacts::fNumber)),
        own.iso(),
        own.focalLengthMm().or(() -> shared(others, ShotFacts::focalLengthMm)),
        own.focalLength35Mm().or(() -> shared(others, ShotFacts::focalLength35Mm)),
        own.pixelPitchMicrons().or(() -> shared(others, ShotFacts::pixelPitchMicrons)),
        own.ambientTemperatureC(),
        own.cameraModel().or(() -> shared(others, ShotFacts::cameraModel)),
        own.lensModel().or(() -> shared(others, ShotFacts::lensModel)),
        own.composite());
  }

  /** The value that several tell and none contradicts. */
  private static <T> Optional<Fact<T>> shared(
      List<ShotFacts> others, Function<ShotFacts, Optional<Fact<T>>> fact) {
    List<T> told =
        others.stream().flatMap(facts -> fact.apply(facts).stream()).map(Fact::value).toList();
    boolean agreed = told.size() >= FEWEST_KIN && told.stream().distinct().count() == 1;
    Optional<T> value = agreed ? Optional.of(told.get(0)) : Optional.empty();
    return value.map(known -> new Fact<>(known, Fact.Source.FOLDER));
  }
}
