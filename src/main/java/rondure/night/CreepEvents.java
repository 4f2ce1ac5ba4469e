package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
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

  /** Two motions that differ by less than this share are one. */
  private static final double ALIKE = 0.3;

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
    List<Creep> creeps = runs.stream().map(this::creep).toList();
    List<int[]> rest = rest();
    if (!mounted && !creeps.isEmpty() && rest.size() == 1 && riseAlike(creeps)) {
      return List.of(event(kind, rest.get(0), creeps.get(0).opposite()));
    }
    List<Event> events = new ArrayList<>();
    for (int r = 0; r < creeps.size(); r++) {
      events.add(event(kind, runs.get(r), creeps.get(r)));
    }
    return events;
  }

  /** Whether all stretches rise as one motion would. */
  private static boolean riseAlike(List<Creep> creeps) {
    return creeps.stream().allMatch(creep -> creep.rises() && creep.isLike(creeps.get(0)));
  }

  /** The stretches between the runs. */
  private List<int[]> rest() {
    boolean[] other = new boolean[course.size()];
    Arrays.fill(other, true);
    runs.forEach(run -> Arrays.fill(other, run[0], run[1] + 1, false));
    return Course.runs(other, 0).stream().filter(run -> run[1] > run[0]).toList();
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

    boolean isLike(Creep other) {
      double away = Math.toRadians(angleDeg - other.angleDeg);
      double x = pxPerMin * Math.cos(away) - other.pxPerMin;
      return Math.hypot(x, pxPerMin * Math.sin(away)) < ALIKE * other.pxPerMin;
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
