package rondure.night;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Gives each frame its night: a gap of more than some hours starts another. */
final class NightSplitter {
  private NightSplitter() {}

  /**
   * @param shots in order (by time, those without a time last)
   * @return night index of each, from 1; frames without a time join their camera's last night, or
   *     the last one of the set
   */
  static List<Integer> nights(List<Shot> shots, double gapHours) {
    List<Integer> nights = new ArrayList<>();
    Map<String, Integer> lastOfCamera = new HashMap<>();
    int night = 1;
    Optional<Double> previousEnd = Optional.empty();
    for (Shot shot : shots) {
      if (shot.startSeconds().isEmpty()) {
        nights.add(lastOfCamera.getOrDefault(shot.cameraName(), night));
        continue;
      }
      double start = shot.startSeconds().get();
      if (previousEnd.isPresent() && start - previousEnd.get() > gapHours * 3600) {
        night++;
      }
      double end = start + shot.exposureSeconds().orElse(0.0);
      previousEnd = Optional.of(Math.max(end, previousEnd.orElse(end)));
      lastOfCamera.put(shot.cameraName(), night);
      nights.add(night);
    }
    return nights;
  }
}
