package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rondure.base.RobustStats;

/**
 * Finds focus test series among the frames of a scene: stretches in which the width falls and rises
 * again along a parabola, in steps well apart, the same in all directions, within minutes. Focus
 * that creeps takes hours and small steps, a knock has two levels, gusts stretch stars.
 */
final class SeriesFinder {
  /** Farthest that a frame may lie off the curve. */
  private static final double MOST_RESIDUAL = 3.5;

  /** Least way from the minimum to both ends, in steps. */
  private static final double LEAST_STEPS = 1.4;

  /** Nobody takes more test frames at one position. */
  private static final int MOST_REPEATS = 6;

  /** A knock and another knock back make two. */
  private static final int LEAST_LEVELS = 3;

  /** Levels are farther apart than the sharpest and the softest frame at one of them. */
  private static final double APART = 1.5;

  private static final double SEEN_SIGMAS = 2;

  /** Share of the frames that differ from the one before, with up to four repeats. */
  private static final double LEAST_CHANGES = 0.15;

  /** How many frames a scatter of one whole step weighs. */
  private static final double PRICE_OF_SCATTER = 10;

  private final List<SeriesPoint> points;
  private final SeriesSettings settings;

  SeriesFinder(List<SeriesPoint> points, SeriesSettings settings) {
    this.points = List.copyOf(points);
    this.settings = settings;
  }

  /** The points of each series, in order; no two share one. */
  List<List<SeriesPoint>> find() {
    List<int[]> found = new ArrayList<>();
    for (int first = 0; first + settings.leastFrames() <= points.size(); first++) {
      int[] best = null;
      double most = 0;
      for (int last = first + settings.leastFrames() - 1; last < end(first); last++) {
        double score = score(first, last);
        if (score > most) {
          most = score;
          best = new int[] {first, last};
        }
      }
      if (best != null) {
        keepBetter(found, best);
      }
    }
    return found.stream().map(run -> points.subList(run[0], run[1] + 1)).toList();
  }

  private int end(int first) {
    return Math.min(points.size(), first + settings.mostFrames());
  }

  /** Of two that overlap the better stays. */
  private void keepBetter(List<int[]> found, int[] run) {
    int[] before = found.isEmpty() ? null : found.get(found.size() - 1);
    if (before == null || before[1] < run[0]) {
      found.add(run);
    } else if (score(run[0], run[1]) > score(before[0], before[1])) {
      found.set(found.size() - 1, run);
    }
  }

  /** How many frames are explained, less the price of steps that scatter; 0 for no series. */
  private double score(int first, int last) {
    List<SeriesPoint> run = points.subList(first, last + 1);
    if (!risesAtBothEnds(run)
        || !isShort(run)
        || !isOneAperture(run)
        || smearChange(run) > settings.smearShare() * growth(run)
        || levels(run) < LEAST_LEVELS
        || changes(run) < LEAST_CHANGES * run.size()) {
      return 0;
    }
    Optional<SeriesFit> fit = fit(run, settings);
    return fit.isPresent() && isSeries(run, fit.get())
        ? run.size() - PRICE_OF_SCATTER * fit.get().uneven()
        : 0;
  }

  static Optional<SeriesFit> fit(List<SeriesPoint> run, SeriesSettings settings) {
    return SeriesFit.of(
        run.stream().mapToInt(SeriesPoint::order).toArray(),
        run.stream().mapToDouble(SeriesPoint::px2).toArray(),
        run.stream().mapToDouble(SeriesPoint::errorPx2).toArray(),
        settings);
  }

  private boolean risesAtBothEnds(List<SeriesPoint> run) {
    double least = run.stream().mapToDouble(SeriesPoint::px2).min().orElse(0);
    double limit = (1 + settings.leastRise()) * least;
    return run.get(0).px2() >= limit && run.get(run.size() - 1).px2() >= limit;
  }

  private boolean isShort(List<SeriesPoint> run) {
    Optional<Double> start = run.get(0).seconds();
    Optional<Double> end = run.get(run.size() - 1).seconds();
    return start.isEmpty()
        || end.isEmpty()
        || end.get() - start.get() <= 60 * settings.mostMinutes();
  }

  private static boolean isOneAperture(List<SeriesPoint> run) {
    return run.stream().map(SeriesPoint::fNumber).distinct().count() == 1;
  }

  private boolean isSeries(List<SeriesPoint> run, SeriesFit fit) {
    Parabola curve = fit.curve();
    double last = fit.positions().get(run.size() - 1);
    boolean bothSides = curve.at() >= LEAST_STEPS && last - curve.at() >= LEAST_STEPS;
    if (!bothSides || curve.leastPx2() <= 0) {
      return false;
    }
    return rises(run.get(0), curve)
        && rises(run.get(run.size() - 1), curve)
        && mostAtOnePosition(fit) <= MOST_REPEATS
        && isNear(run, fit)
        && (fit.uneven() == 0 || isOneByOne(fit) && levels(run) > LEAST_LEVELS)
        && stepsEverywhere(run, fit)
        && stepsApart(run, fit) >= settings.stepSigmas();
  }

  private boolean rises(SeriesPoint end, Parabola curve) {
    double rise = end.px2() - curve.leastPx2();
    return rise >= settings.leastRise() * curve.leastPx2()
        && rise >= settings.riseSigmas() * end.errorPx2();
  }

  /** Of the sharper end. */
  private static double growth(List<SeriesPoint> run) {
    double least = run.stream().mapToDouble(SeriesPoint::px2).min().orElse(0);
    return Math.min(run.get(0).px2(), run.get(run.size() - 1).px2()) - least;
  }

  private static long mostAtOnePosition(SeriesFit fit) {
    return fit.positions().stream()
        .collect(Collectors.groupingBy(p -> p, Collectors.counting()))
        .values()
        .stream()
        .mapToLong(count -> count)
        .max()
        .orElse(0);
  }

  private static boolean isNear(List<SeriesPoint> run, SeriesFit fit) {
    for (int i = 0; i < run.size(); i++) {
      double off = run.get(i).px2() - fit.curve().px2At(fit.positions().get(i));
      if (Math.abs(off) > MOST_RESIDUAL * fit.sigmaPx2().get(i)) {
        return false;
      }
    }
    return true;
  }

  /** How many frames differ from the one before. */
  private static int changes(List<SeriesPoint> run) {
    int changes = 0;
    for (int i = 1; i < run.size(); i++) {
      double noise = Math.hypot(run.get(i).errorPx2(), run.get(i - 1).errorPx2());
      changes += Math.abs(run.get(i).px2() - run.get(i - 1).px2()) > SEEN_SIGMAS * noise ? 1 : 0;
    }
    return changes;
  }

  /** How many widths are well apart. */
  private int levels(List<SeriesPoint> run) {
    List<SeriesPoint> byWidth =
        run.stream().sorted(Comparator.comparingDouble(SeriesPoint::px2)).toList();
    int levels = 1;
    SeriesPoint start = byWidth.get(0);
    for (SeriesPoint point : byWidth) {
      double noise = Math.hypot(point.errorPx2(), start.errorPx2());
      if (point.px2() - start.px2() > APART * settings.stepSigmas() * noise) {
        levels++;
        start = point;
      }
    }
    return levels;
  }

  /**
   * Whether each step away from the minimum is seen: frames that stay alike and are only called
   * several positions are a knock's.
   */
  private static boolean stepsEverywhere(List<SeriesPoint> run, SeriesFit fit) {
    TreeMap<Double, List<SeriesPoint>> positions = new TreeMap<>();
    for (int i = 0; i < run.size(); i++) {
      positions.computeIfAbsent(fit.positions().get(i), p -> new ArrayList<>()).add(run.get(i));
    }
    if (positions.size() == run.size()) {
      return true;
    }
    for (Double one : positions.keySet()) {
      Double two = positions.higherKey(one);
      boolean aside = two != null && (two < fit.curve().at() - 1 || one > fit.curve().at() + 1);
      if (aside && apart(positions.get(one), positions.get(two)) < SEEN_SIGMAS) {
        return false;
      }
    }
    return true;
  }

  /** Difference of two means, in standard errors. */
  private static double apart(List<SeriesPoint> one, List<SeriesPoint> two) {
    double noise = 0;
    double difference = 0;
    for (List<SeriesPoint> points : List.of(one, two)) {
      for (SeriesPoint point : points) {
        noise += Math.pow(point.errorPx2() / points.size(), 2);
        difference += (points == one ? 1 : -1) * point.px2() / points.size();
      }
    }
    return Math.abs(difference) / Math.sqrt(noise);
  }

  /** Repeated frames after uneven steps look like knocks. */
  private static boolean isOneByOne(SeriesFit fit) {
    return fit.positions().stream().distinct().count() == fit.positions().size();
  }

  /** Median step between positions, in standard errors. */
  private static double stepsApart(List<SeriesPoint> run, SeriesFit fit) {
    List<Double> steps = new ArrayList<>();
    for (int i = 1; i < run.size(); i++) {
      if (!fit.positions().get(i).equals(fit.positions().get(i - 1))) {
        double noise = Math.hypot(run.get(i).errorPx2(), run.get(i - 1).errorPx2());
        steps.add(Math.abs(run.get(i).px2() - run.get(i - 1).px2()) / noise);
      }
    }
    return RobustStats.median(steps.stream().mapToDouble(s -> s).toArray());
  }

  /** How much the stretch of the stars changes, px², without the most unlike frame. */
  private static double smearChange(List<SeriesPoint> run) {
    double[] along =
        run.stream().mapToDouble(p -> (p.smear().xxPx2() - p.smear().yyPx2()) / 2).toArray();
    double[] diagonal = run.stream().mapToDouble(p -> p.smear().xyPx2()).toArray();
    double[] off = new double[along.length];
    for (int i = 0; i < off.length; i++) {
      off[i] =
          Math.hypot(
              along[i] - RobustStats.median(along), diagonal[i] - RobustStats.median(diagonal));
    }
    Arrays.sort(off);
    return off[Math.max(0, off.length - 2)];
  }
}
