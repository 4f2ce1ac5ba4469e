package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import rondure.base.RobustStats;
import rondure.night.FocusSeries.Steps;

/**
 * Finds focus test series among the frames of a scene: stretches in which the width falls and rises
 * again in steps, the same in all directions, within minutes, and along a parabola or as the
 * pattern of the field tells. Focus that creeps takes hours and small steps, a knock has few
 * levels, gusts stretch stars and scatter.
 */
final class SeriesFinder {
  /** Unequal steps that no pattern tells of must at least be this many. */
  private static final int STEPS_IF_UNKNOWN = 5;

  /** And shake and haze no likelier than this. */
  private static final double ODDS_IF_UNKNOWN = 0.25;

  /** So many frames on each side tell whether the night is calm. */
  private static final int AROUND = 20;

  private static final int LEAST_AROUND = 6;

  /** A series beside another turns once in five frames at most; random widths twice in three. */
  private static final double MOST_TURNS = 0.2;

  private final List<SeriesPoint> points;
  private final SeriesSettings settings;

  SeriesFinder(List<SeriesPoint> points, SeriesSettings settings) {
    this.points = List.copyOf(points);
    this.settings = settings;
  }

  /** The series, in order; no two share a frame of their curves. */
  List<SeriesRun> find() {
    List<Valley> found = new ArrayList<>();
    for (Valley whole : Valley.all(points, settings)) {
      Valley valley = whole;
      for (Valley other : found) {
        valley = valley.without(other);
      }
      if (valley.steps() >= settings.leastSteps() && isSeries(valley)) {
        found.add(valley);
      }
    }
    found.sort(Comparator.comparingInt(Valley::first));
    return found.stream().map(valley -> SeriesRun.of(points, valley, settings)).toList();
  }

  private List<SeriesPoint> run(Valley valley) {
    return points.subList(valley.first(), valley.last() + 1);
  }

  private boolean isSeries(Valley valley) {
    List<SeriesPoint> run = run(valley);
    return run.size() >= settings.leastFrames()
        && run.size() <= settings.mostFrames()
        && isShort(run)
        && growth(run) >= settings.leastRise() * least(run)
        && smearChange(run) <= settings.smearShare() * (most(run) - least(run))
        && otherOdds(run).orElse(0) <= settings.mostOdds()
        && isCalmAround(valley)
        && isExplained(valley, run);
  }

  private boolean isExplained(Valley valley, List<SeriesPoint> run) {
    Steps steps = SeriesReading.of(run, settings).steps();
    return steps != Steps.UNKNOWN
        || valley.steps() >= STEPS_IF_UNKNOWN && otherOdds(run).orElse(1) <= ODDS_IF_UNKNOWN;
  }

  /** Widths that go up and down from frame to frame beside the valley make valleys by chance. */
  private boolean isCalmAround(Valley valley) {
    int frames = 0;
    int turns = 0;
    int from = Math.max(1, valley.first() - AROUND);
    int to = Math.min(points.size() - 2, valley.last() + AROUND);
    for (int i = from; i <= to; i++) {
      if (i < valley.first() || i > valley.last()) {
        frames++;
        turns += isTurn(points.get(i - 1), points.get(i), points.get(i + 1)) ? 1 : 0;
      }
    }
    return frames < LEAST_AROUND || turns <= MOST_TURNS * frames;
  }

  private boolean isTurn(SeriesPoint before, SeriesPoint point, SeriesPoint after) {
    double sigmas = settings.stepSigmas();
    return point.isWider(before, sigmas) && point.isWider(after, sigmas)
        || before.isWider(point, sigmas) && after.isWider(point, sigmas);
  }

  private boolean isShort(List<SeriesPoint> run) {
    return run.get(run.size() - 1)
        .seconds()
        .flatMap(end -> run.get(0).seconds().map(start -> end - start))
        .map(seconds -> seconds <= 60 * settings.mostMinutes())
        .orElse(true);
  }

  private static double least(List<SeriesPoint> run) {
    return run.stream().mapToDouble(SeriesPoint::acrossPx2).min().orElse(0);
  }

  private static double most(List<SeriesPoint> run) {
    return run.stream().mapToDouble(SeriesPoint::acrossPx2).max().orElse(0);
  }

  /** Of the sharper end. */
  private static double growth(List<SeriesPoint> run) {
    double start = run.get(0).acrossPx2();
    return Math.min(start, run.get(run.size() - 1).acrossPx2()) - least(run);
  }

  /** Mean of the softer half; empty where nothing judged them. */
  private static OptionalDouble otherOdds(List<SeriesPoint> run) {
    return run.stream()
        .sorted(Comparator.comparingDouble(SeriesPoint::acrossPx2).reversed())
        .limit((run.size() + 1) / 2)
        .flatMap(point -> point.otherOdds().stream())
        .mapToDouble(odds -> odds)
        .average();
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
