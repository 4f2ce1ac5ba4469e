package rondure.intake;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rondure.base.NaturalOrder;

/**
 * Recognises the files that are copies of one exposure.
 *
 * <p>Files with a capture time belong together when stem, time and camera agree, in whatever
 * folder. Stems agree when they are the same but for an ending that copies get ("_web", "-edit").
 * An ending that is only a number ("-1", "(2)") counts when the file without it is there as well,
 * since bursts are numbered like that too. Fractions of a second and the camera have to agree where
 * both files tell them. A file without a time joins a file of another extension in its folder with
 * the same stem.
 */
public final class Copies {
  private static final Comparator<Shot> PREFERENCE =
      Comparator.comparing((Shot shot) -> shot.facts().format())
          .thenComparing(shot -> -(long) shot.facts().widthPx() * shot.facts().heightPx())
          .thenComparing(Copies::stem, NaturalOrder.OF_NAMES)
          .thenComparing(shot -> shot.file().relativeName(), NaturalOrder.OF_NAMES);

  /** Files that say more come first, so that those that say less join them. */
  private static final Comparator<Shot> BY_KNOWLEDGE =
      Comparator.comparing(
          shot ->
              (shot.facts().camera().isPresent() ? 0 : 2) + (time(shot).subSecondsKnown() ? 0 : 1));

  private final Set<String> stemsAtSecond = new HashSet<>();
  private final Map<String, List<List<Shot>>> groupsByStemAndSecond = new HashMap<>();
  private final Map<String, List<List<Shot>>> groupsByPlace = new HashMap<>();
  private final Map<String, List<Shot>> groupOfFile = new HashMap<>();

  private Copies() {}

  /**
   * Groups the shots. The file to measure comes first in each exposure: RAW before FITS, TIFF, PNG,
   * JPEG, HEIC, AVIF, then more pixels, then natural order of names, the stem first. Exposures keep
   * the order of their first files.
   *
   * @param shots files of different relative names
   */
  public static List<Exposure> group(List<Shot> shots) {
    Copies copies = new Copies();
    List<Shot> timed = shots.stream().filter(Copies::hasTime).toList();
    timed.forEach(shot -> copies.stemsAtSecond.add(stem(shot) + second(shot)));
    timed.stream().sorted(BY_KNOWLEDGE).forEach(copies::joinByTime);
    shots.stream().filter(shot -> !hasTime(shot)).forEach(copies::joinByPlace);
    Set<String> told = new HashSet<>();
    List<Exposure> exposures = new ArrayList<>();
    for (Shot shot : shots) {
      List<Shot> group = copies.groupOfFile.get(shot.file().relativeName());
      if (told.add(group.get(0).file().relativeName())) {
        exposures.add(new Exposure(group.stream().sorted(PREFERENCE).toList()));
      }
    }
    return exposures;
  }

  private void joinByTime(Shot shot) {
    String key = root(shot) + second(shot);
    List<List<Shot>> groups = groupsByStemAndSecond.computeIfAbsent(key, k -> new ArrayList<>());
    Optional<List<Shot>> own =
        groups.stream()
            .filter(group -> group.stream().allMatch(member -> agree(member, shot)))
            .findFirst();
    join(shot, own.orElseGet(() -> opened(groups)));
  }

  private void joinByPlace(Shot shot) {
    List<List<Shot>> here = groupsByPlace.getOrDefault(place(shot), List.of());
    List<List<Shot>> fitting =
        here.stream()
            .filter(group -> group.stream().allMatch(member -> sameCamera(member, shot)))
            .filter(group -> group.stream().noneMatch(member -> sameFileType(member, shot)))
            .toList();
    join(shot, fitting.size() == 1 ? fitting.get(0) : new ArrayList<>());
  }

  private static List<Shot> opened(List<List<Shot>> groups) {
    List<Shot> group = new ArrayList<>();
    groups.add(group);
    return group;
  }

  private void join(Shot shot, List<Shot> group) {
    group.add(shot);
    groupOfFile.put(shot.file().relativeName(), group);
    List<List<Shot>> here = groupsByPlace.computeIfAbsent(place(shot), k -> new ArrayList<>());
    if (here.stream().noneMatch(known -> known == group)) {
      here.add(group);
    }
  }

  private static boolean agree(Shot one, Shot two) {
    boolean fractions = time(one).subSecondsKnown() && time(two).subSecondsKnown();
    return sameCamera(one, two) && (!fractions || time(one).local().equals(time(two).local()));
  }

  private static boolean sameCamera(Shot one, Shot two) {
    Optional<String> camera = one.facts().camera();
    Optional<String> other = two.facts().camera();
    return camera.isEmpty() || other.isEmpty() || camera.get().equalsIgnoreCase(other.get());
  }

  private static boolean sameFileType(Shot one, Shot two) {
    return place(one).equals(place(two))
        && FileNames.extension(one.file().relativeName())
            .equals(FileNames.extension(two.file().relativeName()));
  }

  /** The stem without the endings of copies. */
  private String root(Shot shot) {
    String root = FileNames.withoutWords(stem(shot));
    String shorter = FileNames.withoutWords(FileNames.withoutNumber(root));
    return stemsAtSecond.contains(shorter + second(shot)) ? shorter : root;
  }

  private static String stem(Shot shot) {
    return FileNames.stem(shot.file().relativeName());
  }

  private static String place(Shot shot) {
    return FileNames.folder(shot.file().relativeName()) + "/" + stem(shot);
  }

  private static boolean hasTime(Shot shot) {
    return shot.facts().captureTime().isPresent();
  }

  private static CaptureTime time(Shot shot) {
    return shot.facts().captureTime().orElseThrow();
  }

  private static String second(Shot shot) {
    return "|" + time(shot).local().truncatedTo(ChronoUnit.SECONDS);
  }
}
