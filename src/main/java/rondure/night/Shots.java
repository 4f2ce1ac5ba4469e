package rondure.night;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rondure.base.NaturalOrder;
import rondure.intake.CaptureTime;
import rondure.intake.ShotFacts;

/** Names the cameras and puts the exposures of a set in order. */
final class Shots {
  private Shots() {}

  /**
   * By time; those without a time follow, by camera and natural order of their names. Where every
   * time has an offset from UTC, UTC decides; else the clocks as they show.
   */
  static List<Shot> inOrder(List<MeasuredExposure> exposures) {
    List<MeasuredExposure> byName = new ArrayList<>(exposures);
    byName.sort(Comparator.comparing(MeasuredExposure::file, NaturalOrder.OF_NAMES));
    boolean utc =
        byName.stream()
            .flatMap(exposure -> exposure.facts().captureTime().stream())
            .allMatch(time -> time.offsetSeconds().isPresent());
    Map<String, String> names = cameraNames(byName);
    List<Shot> shots = new ArrayList<>();
    for (MeasuredExposure exposure : byName) {
      Optional<Double> start = exposure.facts().captureTime().map(time -> seconds(time, utc));
      shots.add(new Shot(exposure, names.get(cameraKey(exposure.facts())), start));
    }
    shots.sort(
        Comparator.comparing((Shot shot) -> shot.startSeconds().isEmpty())
            .thenComparing(shot -> shot.startSeconds().orElse(0.0))
            .thenComparing(shot -> shot.startSeconds().isEmpty() ? shot.cameraName() : ""));
    return shots;
  }

  /** A camera by its model; files that name none count as one camera. */
  private static String cameraKey(ShotFacts facts) {
    return facts.camera().map(String::strip).orElse("");
  }

  private static Map<String, String> cameraNames(List<MeasuredExposure> exposures) {
    Set<String> keys = new LinkedHashSet<>();
    exposures.forEach(exposure -> keys.add(cameraKey(exposure.facts())));
    Map<String, String> names = new HashMap<>();
    int number = 0;
    for (String key : keys) {
      number++;
      names.put(key, key.isEmpty() ? "camera " + number : key);
    }
    return names;
  }

  private static double seconds(CaptureTime time, boolean utc) {
    int offset = utc ? time.offsetSeconds().orElse(0) : 0;
    return time.local().toEpochSecond(ZoneOffset.UTC) - offset + time.local().getNano() * 1e-9;
  }
}
