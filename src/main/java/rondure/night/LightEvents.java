package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.special.Erf;
import rondure.base.RobustStats;

/**
 * Light lost to dew or cloud, and a sky that grows brighter. An episode is a run of frames beyond
 * the least that is told, with the neighbours that lead to it.
 */
final class LightEvents {
  /** Where an episode begins, as a share of the least that makes one. */
  private static final double FOOT_SHARE = 0.4;

  /** Dew that grows to the end has its largest loss this near to it. */
  private static final double LAST_SHARE = 0.8;

  /** Percentile that stands for the dark sky. */
  private static final double DARK = 0.75;

  private final Course course;
  private final EventSettings settings;

  private LightEvents(Course course, EventSettings settings) {
    this.course = course;
    this.settings = settings;
  }

  static List<Event> of(Course course, EventSettings settings) {
    LightEvents events = new LightEvents(course, settings);
    List<Event> found = new ArrayList<>(events.losses());
    found.addAll(events.brightenings());
    return found;
  }

  private List<Event> losses() {
    double sigmas = -Math.sqrt(2) * Erf.erfInv(2 * settings.falseAlarmRate() - 1);
    IntToDoubleFunction lost = i -> course.course(i).lightLostMag().orElse(Double.NaN);
    IntToDoubleFunction noise =
        i -> sigmas * course.course(i).lightLostErrorMag().orElse(Double.NaN);
    List<Event> events = new ArrayList<>();
    for (int[] run : episodes(lost, noise, settings.lossMag())) {
      double most = most(lost, run);
      EventKind kind = grows(lost, run, most) ? EventKind.DEW : EventKind.CLOUD;
      events.add(event(kind, run, Map.of("lostMag", most)));
    }
    return events;
  }

  private List<Event> brightenings() {
    double[] sky = new double[course.size()];
    for (int i = 0; i < sky.length; i++) {
      sky[i] = course.course(i).skyMag().orElse(Double.NaN);
    }
    double dark = RobustStats.percentile(DARK, sky);
    double[] steps = IntStream.range(1, sky.length).mapToDouble(i -> sky[i] - sky[i - 1]).toArray();
    double noise = 4 * RobustStats.madSigma(steps) / Math.sqrt(2);
    List<Event> events = new ArrayList<>();
    for (int[] run : episodes(i -> dark - sky[i], i -> noise, settings.brighterMag())) {
      if (run[1] > run[0]) {
        double most = most(i -> dark - sky[i], run);
        events.add(event(EventKind.SKY_BRIGHTER, run, Map.of("brighterMag", most)));
      }
    }
    return events;
  }

  /** Runs with a peak beyond the least and beyond noise, widened to the foot at both sides. */
  private List<int[]> episodes(IntToDoubleFunction value, IntToDoubleFunction noise, double least) {
    boolean[] foot = new boolean[course.size()];
    boolean[] peak = new boolean[course.size()];
    for (int i = 0; i < foot.length; i++) {
      foot[i] = value.applyAsDouble(i) > Math.max(FOOT_SHARE * least, noise.applyAsDouble(i));
      peak[i] = value.applyAsDouble(i) > Math.max(least, noise.applyAsDouble(i));
    }
    return Course.runs(foot, 1).stream()
        .filter(run -> IntStream.rangeClosed(run[0], run[1]).anyMatch(i -> peak[i]))
        .toList();
  }

  /** Loses more and more to the end of the scene. */
  private boolean grows(IntToDoubleFunction lost, int[] run, double most) {
    boolean toTheEnd = run[1] >= course.size() - 2;
    double last = lost.applyAsDouble(run[1]);
    return toTheEnd && run[1] - run[0] >= 2 && last >= LAST_SHARE * most;
  }

  private static double most(IntToDoubleFunction value, int[] run) {
    return IntStream.rangeClosed(run[0], run[1])
        .mapToDouble(value)
        .filter(v -> !Double.isNaN(v))
        .max()
        .orElse(0);
  }

  private Event event(EventKind kind, int[] run, Map<String, Double> sizes) {
    return Event.of(
        kind, course.scene().number(), course.place(run[0]), course.place(run[1]), sizes);
  }
}
