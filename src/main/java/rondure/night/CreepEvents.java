package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import rondure.base.RobustStats;
import rondure.sky.SceneSky;

/**
 * A camera that turns steadily: a head that sags, or a mount that does not follow the sky.
 *
 * <p>Where one stretch of a scene turns against another, the stars tell the difference alone: that
 * this one rises and the other stands, or that the other sags and this one stands. Heads sag.
 */
final class CreepEvents {
  /** Sine of the angle over the horizontal from which a stretch rises. */
  private static final double RISING = 0.5;

  private final Course course;
  private final List<int[]> runs;

  private CreepEvents(Course course, EventSettings settings) {
    this.course = course;
    boolean[] marked = new boolean[course.size()];
    for (int i = 0; i < marked.length; i++) {
      marked[i] = isSkyKnown(course) && pxPerMin(i) >= settings.droopPxPerMin();
    }
    this.runs = Course.runs(marked, 0).stream().filter(run -> run[1] > run[0]).toList();
  }

  /** Where the sky's own turning is not known, the camera's cannot be told from it. */
  private static boolean isSkyKnown(Course course) {
    SceneSky.Finding finding = course.scene().solution().finding();
    return finding == SceneSky.Finding.SKY_TURNS || finding == SceneSky.Finding.TRACKING;
  }

  static List<Event> of(Course course, EventSettings settings) {
    return new CreepEvents(course, settings).find();
  }

  private List<Event> find() {
    boolean mounted = course.scene().isMounted();
    EventKind kind = mounted ? EventKind.TRACKING_ERROR : EventKind.DROOP;
    List<Event> events = new ArrayList<>();
    for (int[] run : runs) {
      Creep creep = creep(run);
      int[] rest = rest(run);
      boolean restSags = !mounted && creep.rises() && runs.size() == 1 && rest[1] > rest[0];
      events.add(restSags ? event(kind, rest, creep.opposite()) : event(kind, run, creep));
    }
    return events;
  }

  /** The frames beside a run that ends or begins the scene; none when it does neither or both. */
  private int[] rest(int[] run) {
    int last = course.size() - 1;
    if (run[0] == 0) {
      return new int[] {run[1] + 1, last};
    }
    return run[1] == last ? new int[] {0, run[0] - 1} : new int[] {0, 0};
  }

  private Event event(EventKind kind, int[] run, Creep creep) {
    return Event.of(
        kind,
        course.scene().number(),
        course.place(run[0]),
        course.place(run[1]),
        Map.of("driftPxPerMin", creep.pxPerMin(), "angleDeg", creep.angleDeg()));
  }

  private double pxPerMin(int index) {
    return course.course(index).creep().map(FrameCourse.Creep::pxPerMin).orElse(0.0);
  }

  /** A stretch's motion, as {@link FrameCourse.Creep} has it. */
  private record Creep(double pxPerMin, double angleDeg) {
    boolean rises() {
      return -Math.sin(Math.toRadians(angleDeg)) > RISING;
    }

    Creep opposite() {
      return new Creep(pxPerMin, (angleDeg + 180) % 360);
    }
  }

  /** Median rate, and the direction of the mean motion. */
  private Creep creep(int[] run) {
    double[] rates = IntStream.rangeClosed(run[0], run[1]).mapToDouble(this::pxPerMin).toArray();
    double x = 0;
    double y = 0;
    for (int i = run[0]; i <= run[1]; i++) {
      FrameCourse.Creep creep = course.course(i).creep().orElseThrow();
      x += creep.pxPerMin() * Math.cos(Math.toRadians(creep.angleDeg()));
      y += creep.pxPerMin() * Math.sin(Math.toRadians(creep.angleDeg()));
    }
    double angle = (Math.toDegrees(Math.atan2(y, x)) + 360) % 360;
    return new Creep(RobustStats.median(rates), angle);
  }
}
