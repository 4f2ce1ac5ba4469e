package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import rondure.base.RobustStats;

/** A camera that turns steadily: a head that sags, or a mount that does not follow the sky. */
final class CreepEvents {
  private CreepEvents() {}

  static List<Event> of(Course course, EventSettings settings) {
    boolean[] marked = new boolean[course.size()];
    for (int i = 0; i < marked.length; i++) {
      marked[i] = pxPerMin(course, i) >= settings.droopPxPerMin();
    }
    EventKind kind = course.scene().isMounted() ? EventKind.TRACKING_ERROR : EventKind.DROOP;
    List<Event> events = new ArrayList<>();
    for (int[] run : Course.runs(marked, 0)) {
      if (run[1] > run[0]) {
        events.add(
            Event.of(
                kind,
                course.scene().number(),
                course.place(run[0]),
                course.place(run[1]),
                sizes(course, run)));
      }
    }
    return events;
  }

  private static double pxPerMin(Course course, int index) {
    return course.course(index).creep().map(FrameCourse.Creep::pxPerMin).orElse(0.0);
  }

  /** Median rate, and the direction of the mean motion. */
  private static Map<String, Double> sizes(Course course, int[] run) {
    double[] rates =
        IntStream.rangeClosed(run[0], run[1]).mapToDouble(i -> pxPerMin(course, i)).toArray();
    double x = 0;
    double y = 0;
    for (int i = run[0]; i <= run[1]; i++) {
      FrameCourse.Creep creep = course.course(i).creep().orElseThrow();
      x += creep.pxPerMin() * Math.cos(Math.toRadians(creep.angleDeg()));
      y += creep.pxPerMin() * Math.sin(Math.toRadians(creep.angleDeg()));
    }
    double angle = (Math.toDegrees(Math.atan2(y, x)) + 360) % 360;
    return Map.of("driftPxPerMin", RobustStats.median(rates), "angleDeg", angle);
  }
}
