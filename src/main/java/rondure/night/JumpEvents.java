package rondure.night;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.blur.Evidence;

/**
 * Knocks and new aims. A jump stands between two frames; a knock during an exposure shows as two
 * images of every star there, and as a jump to that frame's middle or from it.
 */
final class JumpEvents {
  private JumpEvents() {}

  static List<Event> of(Course course, EventSettings settings) {
    List<Event> events = new ArrayList<>();
    int last = -2;
    for (int i = 0; i < course.size(); i++) {
      Optional<Double> twicePx = twicePx(course.frames().get(i));
      double jumpPx = i == 0 ? 0 : course.course(i).jumpPx().orElse(0.0);
      double sizePx = Math.max(jumpPx, twicePx.orElse(0.0));
      if (sizePx < settings.knockLeastPx() || sizePx == 0) {
        continue;
      }
      boolean same = last == i - 1 && twicePx(course.frames().get(last)).isPresent();
      if (same) {
        continue;
      }
      boolean aimed = course.course(i).jumpShare().orElse(0.0) >= settings.reAimShare();
      Map<String, Double> sizes = new HashMap<>(Map.of("jumpPx", sizePx));
      EventKind kind = aimed ? EventKind.RE_AIM : EventKind.KNOCK;
      events.add(Event.of(kind, course.scene().number(), course.place(i), course.place(i), sizes));
      last = i;
    }
    return events;
  }

  private static Optional<Double> twicePx(NightFrame frame) {
    return frame
        .verdict()
        .flatMap(
            verdict ->
                verdict.evidence().stream()
                    .filter(seen -> seen.kind() == Evidence.Kind.DOUBLE_IMAGE)
                    .map(seen -> seen.values().getOrDefault("offsetPx", 0.0))
                    .findFirst());
  }
}
