package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.hipparchus.special.Erf;
import rondure.base.RobustStats;

/**
 * Light lost to dew or cloud, and a sky that grows brighter. An episode is a run of frames beyond
 * the least that is told, from where the light leaves its level to where it is back.
 */
final class LightEvents {
  /** Where an episode begins, as a share of the least that makes one. */
  private static final double FOOT_SHARE = 0.4;

  /** Dew that grows to the end has its largest loss this near to it. */
  private static final double LAST_SHARE = 0.8;

  /** Dew takes at least so many frames to most of its loss, and never clears by more. */
  private static final int GROWING_FRAMES = 4;

  private static final double CLEARING_SHARE = 0.25;

  /** Percentile that stands for the dark sky. */
  private static final double DARK = 0.9;

  private final Course course;
  private final EventSettings settings;
  private final double sigmas;

  /** Light lost beyond what the air takes steadily, mag. */
  private final double[] lost;

  private LightEvents(Course course, EventSettings settings) {
    this.course = course;
    this.settings = settings;
    this.sigmas = -Math.sqrt(2) * Erf.erfInv(2 * settings.falseAlarmRate() - 1);
    double[] loss = new double[course.size()];
    Arrays.setAll(loss, i -> course.course(i).lightLostMag().orElse(Double.NaN));
    lost = course.isTimed() ? AirTrend.off(course.hours(), loss) : loss;
  }

  static List<Event> of(Course course, EventSettings settings) {
    LightEvents events = new LightEvents(course, settings);
    List<Event> found = new ArrayList<>(events.losses());
    found.addAll(events.brightenings());
    return found;
  }

  private List<Event> losses() {
    double[] noise = new double[course.size()];
    Arrays.setAll(noise, i -> sigmas * course.course(i).lightLostErrorMag().orElse(Double.NaN));
    List<Event> events = new ArrayList<>();
    for (Episode episode : episodes(lost, noise, settings.lossMag())) {
      int[] run = episode.run();
      boolean dew = grows(lost, run);
      Onset onset = dew ? onset(lost, run, episode.free()) : Onset.at(run[0]);
      EventKind kind = dew ? EventKind.DEW : EventKind.CLOUD;
      Map<String, Double> sizes = Map.of("lostMag", most(lost, run));
      events.add(event(kind, onset, Onset.at(run[1]), sizes));
    }
    return events;
  }

  private List<Event> brightenings() {
    double[] sky = new double[course.size()];
    for (int i = 0; i < sky.length; i++) {
      sky[i] = course.course(i).skyMag().orElse(Double.NaN);
    }
    double dark = RobustStats.percentile(DARK, clear(sky));
    double[] steps = IntStream.range(1, sky.length).mapToDouble(i -> sky[i] - sky[i - 1]).toArray();
    double[] noise = new double[sky.length];
    Arrays.fill(noise, sigmas * RobustStats.madSigma(steps) / Math.sqrt(2));
    double[] brighter = new double[sky.length];
    Arrays.setAll(brighter, i -> dark - sky[i]);
    List<Event> events = new ArrayList<>();
    for (Episode episode : episodes(brighter, noise, settings.brighterMag())) {
      int[] run = episode.run();
      if (run[1] > run[0]) {
        Map<String, Double> sizes = Map.of("brighterMag", most(brighter, run));
        Onset onset = onset(brighter, run, episode.free());
        events.add(
            event(EventKind.SKY_BRIGHTER, onset, end(brighter, run, episode.taken()), sizes));
      }
    }
    return events;
  }

  /** Without frames that lost light, as what takes it from stars takes it from the sky. */
  private double[] clear(double[] sky) {
    double[] clear = new double[sky.length];
    for (int i = 0; i < sky.length; i++) {
      clear[i] = lost[i] > FOOT_SHARE * settings.lossMag() ? Double.NaN : sky[i];
    }
    return Arrays.stream(clear).allMatch(Double::isNaN) ? sky : clear;
  }

  /**
   * Frames beyond the foot, one of them beyond the peak.
   *
   * @param first frame
   * @param last frame
   * @param free first frame after what else left its level before
   * @param taken first frame of what else leaves its level after
   */
  private record Episode(int first, int last, int free, int taken) {
    int[] run() {
      return new int[] {first, last};
    }
  }

  /** Runs with a peak beyond the least and beyond noise, widened to the foot at both sides. */
  private static List<Episode> episodes(double[] value, double[] noise, double least) {
    boolean[] foot = new boolean[value.length];
    boolean[] peak = new boolean[value.length];
    for (int i = 0; i < foot.length; i++) {
      foot[i] = value[i] > Math.max(FOOT_SHARE * least, noise[i]);
      peak[i] = value[i] > Math.max(least, noise[i]);
    }
    List<int[]> runs = Course.runs(foot, 1);
    List<Episode> episodes = new ArrayList<>();
    for (int k = 0; k < runs.size(); k++) {
      int[] run = runs.get(k);
      int free = k == 0 ? 0 : runs.get(k - 1)[1] + 1;
      int taken = k + 1 < runs.size() ? runs.get(k + 1)[0] : value.length;
      if (IntStream.rangeClosed(run[0], run[1]).anyMatch(i -> peak[i])) {
        episodes.add(new Episode(run[0], run[1], free, taken));
      }
    }
    return episodes;
  }

  /**
   * Where the rise to a run began.
   *
   * @param free first frame of no run before it
   */
  private static Onset onset(double[] value, int[] run, int free) {
    int from = run[0];
    while (from > free && !Double.isNaN(value[from - 1])) {
      from--;
    }
    boolean known = IntStream.rangeClosed(run[0], run[1]).noneMatch(i -> Double.isNaN(value[i]));
    return known && from < run[0] ? Onset.of(value, from, run[0], run[1]) : Onset.at(run[0]);
  }

  /**
   * Where the fall from a run was done: its onset in the mirror.
   *
   * @param taken first frame of the run after it
   */
  private static Onset end(double[] value, int[] run, int taken) {
    int last = value.length - 1;
    double[] mirrored = new double[value.length];
    Arrays.setAll(mirrored, i -> value[last - i]);
    Onset end = onset(mirrored, new int[] {last - run[1], last - run[0]}, last + 1 - taken);
    FrameSpan span = new FrameSpan(last - end.span().latest(), last - end.span().earliest());
    return new Onset(last - end.first(), span);
  }

  /** Loses more and more, slowly, to the end of the scene. */
  private boolean grows(double[] lost, int[] run) {
    double most = most(lost, run);
    double cleared = 0;
    int risen = run[1];
    double before = 0;
    for (int i = run[1]; i >= run[0]; i--) {
      risen = lost[i] >= LAST_SHARE * most ? i : risen;
    }
    for (int i = run[0]; i <= run[1]; i++) {
      if (!Double.isNaN(lost[i])) {
        cleared += Math.max(0, before - lost[i]);
        before = lost[i];
      }
    }
    boolean toTheEnd = run[1] >= course.size() - 2 && lost[run[1]] >= LAST_SHARE * most;
    boolean slowly = risen - run[0] >= GROWING_FRAMES;
    return toTheEnd && slowly && cleared <= CLEARING_SHARE * most;
  }

  private static double most(double[] value, int[] run) {
    return IntStream.rangeClosed(run[0], run[1])
        .mapToDouble(i -> value[i])
        .filter(v -> !Double.isNaN(v))
        .max()
        .orElse(0);
  }

  private Event event(EventKind kind, Onset first, Onset last, Map<String, Double> sizes) {
    return Event.of(
            kind,
            course.scene().number(),
            course.place(first.first()),
            course.place(last.first()),
            sizes)
        .within(first.span().by(course::place), last.span().by(course::place));
  }
}
