package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.hipparchus.special.Erf;
import rondure.base.RobustStats;
import rondure.blur.Budget;
import rondure.blur.Cause;

/**
 * Gusts and the hand on the shutter: frames that the tripod widens, beyond its error and beyond
 * what a steady droop explains. The first frame after a pause, alone, is the hand's.
 */
final class ShakeEvents {
  /** Calm frames between gusts of one windy spell. */
  private static final int GAP = 2;

  /** A single shaken frame in the middle of a burst must be plainly so. */
  private static final double SINGLE_WIDENING = 1.25;

  /** A verdict as sure as this proves a shake by itself. */
  private static final double SURE = 0.9;

  /** A tripod's part as sure as this lets a wander of the focus be the tripod's too. */
  private static final double ALSO_SIGMAS = 3;

  /** Focus is known no better than to this share of the star's moment. */
  private static final double LEAST_NOISE = 0.01;

  /** Frames to each side that tell the usual focus. */
  private static final int BESIDE = 10;

  private final Course course;
  private final EventSettings settings;
  private final Set<Integer> jumps = new HashSet<>();
  private final double[] widening;
  private final boolean[] shaken;

  ShakeEvents(Course course, EventSettings settings, List<Event> jumps) {
    this.course = course;
    this.settings = settings;
    jumps.forEach(event -> this.jumps.add(event.firstFrame()));
    this.widening = new double[course.size()];
    this.shaken = new boolean[course.size()];
  }

  List<Event> find() {
    mark();
    List<Event> events = new ArrayList<>();
    for (int i = 0; i < shaken.length; i++) {
      boolean alone = shaken[i] && !isShaken(i + 1);
      if (alone && !isShaken(i - 1) && isJump(i + 1)) {
        shaken[i] = false; // the knock came before its shutter closed
      } else if (alone && course.startsBurst(i, settings.pauseRatio())) {
        events.add(event(EventKind.HAND_ON_SHUTTER, i, i, Map.of("wideningRatio", widening[i])));
        shaken[i] = false;
      }
    }
    for (int[] run : Course.runs(shaken, GAP)) {
      int count = (int) IntStream.rangeClosed(run[0], run[1]).filter(i -> shaken[i]).count();
      double most =
          IntStream.rangeClosed(run[0], run[1]).mapToDouble(i -> widening[i]).max().orElse(1);
      if (count > 1 || most >= SINGLE_WIDENING) {
        Map<String, Double> sizes = Map.of("wideningRatio", most, "frameCount", (double) count);
        events.add(event(EventKind.GUSTS, run[0], run[1], sizes));
      }
    }
    return events;
  }

  private boolean isShaken(int index) {
    return index >= 0 && index < shaken.length && shaken[index];
  }

  private boolean isJump(int index) {
    return index < shaken.length && jumps.contains(course.place(index));
  }

  private Event event(EventKind kind, int first, int last, Map<String, Double> sizes) {
    return Event.of(kind, course.scene().number(), course.place(first), course.place(last), sizes);
  }

  private void mark() {
    double[] moved = new double[shaken.length];
    for (int i = 0; i < moved.length; i++) {
      int frame = i;
      moved[i] = budget(i).map(b -> b.sky().tripodPx2() - droopPx2(frame)).orElse(Double.NaN);
    }
    double[] wander = wander();
    double[] steps =
        IntStream.range(1, wander.length).mapToDouble(i -> wander[i] - wander[i - 1]).toArray();
    double wanderNoise = RobustStats.madSigma(steps) / Math.sqrt(2);
    double usual = RobustStats.median(moved);
    double scatter = RobustStats.madSigma(moved);
    double limit = -Math.sqrt(2) * Erf.erfInv(2 * settings.falseAlarmRate() - 1);
    for (int i = 0; i < moved.length; i++) {
      widening[i] = 1;
      if (Double.isNaN(moved[i]) || jumps.contains(course.place(i))) {
        continue;
      }
      Budget budget = budget(i).orElseThrow();
      double all = budget.sky().corePx2() + budget.sky().excessPx2();
      double error = scatterOf(budget.error().tripodPx2(), scatter, moved, usual);
      boolean wanders =
          moved[i] > ALSO_SIGMAS * error && wander[i] > limit * (wanderNoise + LEAST_NOISE * all);
      double shake = Math.max(0, moved[i]) + (wanders ? wander[i] : 0);
      widening[i] = Math.sqrt(all / Math.max(1e-6, all - shake));
      boolean proven =
          moved[i] > Math.min(usual, 0) + limit * error || wanders || isCalledTripod(i);
      shaken[i] = widening[i] >= settings.shakeWidening() && proven;
    }
  }

  /**
   * How much larger the focus is than in the frames about: wind that swings alike in all directions
   * looks like defocus, but comes back to where it was.
   */
  private double[] wander() {
    double[] focus = new double[shaken.length];
    for (int i = 0; i < focus.length; i++) {
      focus[i] = budget(i).map(b -> b.sky().focusPx2()).orElse(Double.NaN);
    }
    double[] wander = new double[focus.length];
    for (int i = 0; i < wander.length; i++) {
      int from = Math.max(0, i - BESIDE);
      int until = Math.min(focus.length, i + BESIDE + 1);
      wander[i] = focus[i] - RobustStats.median(Arrays.copyOfRange(focus, from, until));
    }
    return wander;
  }

  /** The verdict rests on more than the size: on a tail, on lamps, on directions. */
  private boolean isCalledTripod(int index) {
    return course
        .frames()
        .get(index)
        .verdict()
        .filter(verdict -> verdict.cause().equals(Optional.of(Cause.TRIPOD)))
        .filter(verdict -> verdict.confidence() >= SURE)
        .isPresent();
  }

  /** The stated error, or the scatter of the calmer half where that is larger. */
  private static double scatterOf(double error, double scatter, double[] moved, double usual) {
    double[] calm = Arrays.stream(moved).filter(m -> m <= usual).toArray();
    double half = RobustStats.percentile(0.5, calm);
    return Math.max(error, Math.min(scatter, Math.abs(usual - half) / 0.6745));
  }

  private Optional<Budget> budget(int index) {
    return course.frames().get(index).budget();
  }

  /** Mean axis of an even line: length² / 24. */
  private double droopPx2(int index) {
    NightFrame frame = course.frames().get(index);
    double seconds = frame.facts().exposureSeconds().map(fact -> fact.value()).orElse(0.0);
    double px = course.course(index).creep().map(c -> c.pxPerMin() * seconds / 60).orElse(0.0);
    return px * px / 24;
  }
}
