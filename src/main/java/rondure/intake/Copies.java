package rondure.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rondure.base.NaturalOrder;

/**
 * Recognises the files that are copies of one exposure.
 *
 * <p>Files with a capture time belong together when stem (without the endings that copies get),
 * second and camera agree, in whatever folder. A file without a time joins the one exposure of its
 * folder with the same stem.
 */
public final class Copies {
  private static final Comparator<Shot> PREFERENCE =
      Comparator.comparing((Shot shot) -> shot.facts().format())
          .thenComparing(shot -> -(long) shot.facts().widthPx() * shot.facts().heightPx())
          .thenComparing(shot -> shot.file().relativeName(), NaturalOrder.OF_NAMES);

  private Copies() {}

  /** Groups the shots; order of first appearance kept. */
  public static List<Exposure> group(List<Shot> shots) {
    Map<String, String> timedInFolder = new LinkedHashMap<>();
    Map<String, List<Shot>> groups = new LinkedHashMap<>();
    for (Shot shot : shots) {
      if (shot.facts().captureTime().isPresent()) {
        timedInFolder.putIfAbsent(place(shot), key(shot));
      }
    }
    for (Shot shot : shots) {
      String key =
          shot.facts().captureTime().isPresent()
              ? key(shot)
              : timedInFolder.getOrDefault(place(shot), place(shot));
      groups.computeIfAbsent(key, unused -> new ArrayList<>()).add(shot);
    }
    return groups.values().stream().map(Copies::exposure).toList();
  }

  private static Exposure exposure(List<Shot> shots) {
    return new Exposure(shots.stream().sorted(PREFERENCE).toList());
  }

  private static String place(Shot shot) {
    String name = shot.file().relativeName();
    return FileNames.folder(name) + "/" + FileNames.stem(name);
  }

  private static String key(Shot shot) {
    CaptureTime time = shot.facts().captureTime().orElseThrow();
    return FileNames.bareStem(shot.file().relativeName())
        + "|"
        + time.local().withNano(0)
        + "|"
        + shot.facts().cameraModel().orElse("");
  }
}
