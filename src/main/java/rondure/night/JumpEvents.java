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
  /** How much of the predicted moment must be seen. */
  private static final double LEAST_OF_MOMENT = 0.4;

  private JumpEvents() {}

  static List<Event> of(Course course, EventSettings settings) {
    List<Event> events = new ArrayList<>();
    for (int i = 0; i < course.size(); i++) {
      boolean during = isDuring(course, i);
      double sizePx = sizePx(course, i) + (during ? jumpPx(course, i + 1) : 0);
      if (sizePx >= settings.knockLeastPx() && sizePx > 0) {
        boolean aimed = course.course(i).jumpShare().orElse(0.0) >= settings.reAimShare();
        Map<String, Double> sizes = new HashMap<>(Map.of("jumpPx", sizePx));
        EventKind kind = aimed ? EventKind.RE_AIM : EventKind.KNOCK;
        events.add(
            Event.of(kind, course.scene().number(), course.place(i), course.place(i), sizes));
      }
      i += during || twicePx(course, i).isPresent() ? 1 : 0;
    }
    return events;
  }

  private static double sizePx(Course course, int index) {
    return Math.max(jumpPx(course, index), twicePx(course, index).orElse(0.0));
  }

  private static double jumpPx(Course course, int index) {
    boolean known = index > 0 && index < course.size();
    return known ? course.course(index).jumpPx().orElse(0.0) : 0;
  }

  /**
   * Whether the jumps to a frame and from it are one, made while its shutter was open: a star that
   * spends the shares p and 1 - p at two places s apart has a mean place (1 - p) s from the first
   * and a mean second moment of p (1 - p) s² / 2, half the product of the two jumps.
   */
  private static boolean isDuring(Course course, int index) {
    double productPx2 = jumpPx(course, index) * jumpPx(course, index + 1) / 2;
    double movedPx2 =
        course.frames().get(index).budget().map(budget -> budget.sky().tripodPx2()).orElse(0.0);
    return productPx2 > 0
        && twicePx(course, index).isEmpty()
        && movedPx2 > LEAST_OF_MOMENT * productPx2;
  }

  private static Optional<Double> twicePx(Course course, int index) {
    return course
        .frames()
        .get(index)
        .verdict()
        .flatMap(
            verdict ->
                verdict.evidence().stream()
                    .filter(seen -> seen.kind() == Evidence.Kind.DOUBLE_IMAGE)
                    .map(seen -> seen.values().getOrDefault("offsetPx", 0.0))
                    .findFirst());
  }
}
