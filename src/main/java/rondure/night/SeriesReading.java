package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import rondure.night.FocusSeries.Curve;
import rondure.night.FocusSeries.Ending;
import rondure.night.FocusSeries.Point;
import rondure.night.FocusSeries.Steps;

/** Reads one series: positions, parabola, best frame. */
final class SeriesReading {
  /** A sharpest frame at an end is beyond doubt when its inner neighbour is so much wider. */
  private static final double CHANGE_SIGMAS = 4;

  /** Scatter of the positions below which steps are called equal, a share of a step. */
  private static final double EQUAL_WITHIN = 0.07;

  /** A parabola is given up when chance would leave so large a misfit this seldom. */
  private static final double BY_CHANCE = 0.01;

  private final List<SeriesPoint> run;
  private final SeriesSettings settings;
  private final FieldLevels levels;

  private SeriesReading(List<SeriesPoint> run, SeriesSettings settings) {
    this.run = run;
    this.settings = settings;
    this.levels = FieldLevels.of(run.stream().map(SeriesPoint::field).toList());
  }

  /**
   * What a series shows by itself.
   *
   * @param steps what is known of the positions
   * @param positions of its frames
   * @param curve the parabola, where there is one
   * @param ending where the sharpest lies
   * @param best index of the frame nearest to best focus
   * @param levels second moments of its frames
   */
  record Reading(
      Steps steps,
      List<Double> positions,
      Optional<Curve> curve,
      Ending ending,
      int best,
      FieldLevels levels) {
    List<Point> points(List<SeriesPoint> run) {
      List<Point> points = new ArrayList<>();
      for (int i = 0; i < run.size(); i++) {
        points.add(
            new Point(
                run.get(i).place(),
                positions.get(i),
                levels.px2().get(i),
                levels.errorPx2().get(i)));
      }
      return points;
    }
  }

  /**
   * @param run at least one frame
   */
  static Reading of(List<SeriesPoint> run, SeriesSettings settings) {
    return new SeriesReading(run, settings).read();
  }

  private Reading read() {
    Ending ending = ending();
    Optional<SeriesFit> even =
        ending == Ending.NO_CHANGE
            ? Optional.empty()
            : SeriesFit.of(SeriesPlans.of(run, levels, settings.leastSteps()), levels)
                .filter(f -> f.uneven() <= settings.mostUneven());
    if (even.isPresent() && isInside(even.get().positions(), even.get().curve())) {
      Steps steps = even.get().uneven() <= EQUAL_WITHIN ? Steps.EQUAL : Steps.UNEVEN;
      return reading(steps, even.get().positions(), even.get().curve());
    }
    Optional<Reading> signed = ending == Ending.NO_CHANGE ? Optional.empty() : byField();
    return signed.orElseGet(
        () ->
            new Reading(
                Steps.UNKNOWN,
                orders(),
                Optional.empty(),
                ending,
                SeriesPlans.sharpest(run),
                levels));
  }

  private static boolean isInside(List<Double> positions, Parabola curve) {
    double least = positions.stream().mapToDouble(p -> p).min().orElse(0);
    double most = positions.stream().mapToDouble(p -> p).max().orElse(0);
    return curve.at() > least + curve.atError()
        && curve.at() < most - curve.atError()
        && curve.leastPx2() > 0;
  }

  private Reading reading(Steps steps, List<Double> positions, Parabola curve) {
    int best = 0;
    for (int i = 1; i < run.size(); i++) {
      double nearer =
          Math.abs(positions.get(i) - curve.at()) - Math.abs(positions.get(best) - curve.at());
      boolean sharper = levels.px2().get(i) < levels.px2().get(best);
      best = nearer < -1e-9 || nearer < 1e-9 && sharper ? i : best;
    }
    Curve shown =
        new Curve(
            curve.at(), curve.atError(), curve.leastPx2(), 4 * Math.sqrt(curve.curvaturePx2()));
    return new Reading(steps, positions, Optional.of(shown), Ending.BOTH_SIDES, best, levels);
  }

  private List<Double> orders() {
    return run.stream().map(p -> (double) (p.order() - run.get(0).order())).toList();
  }

  /** Softer by more than noise before and behind the sharpest, or on one side only. */
  private Ending ending() {
    int sharpest = SeriesPlans.sharpest(run);
    boolean before = isSofter(0, sharpest, sharpest);
    boolean behind = isSofter(sharpest + 1, run.size(), sharpest);
    if (before && behind) {
      return Ending.BOTH_SIDES;
    }
    return before ? Ending.LAST_SHARPEST : behind ? Ending.FIRST_SHARPEST : Ending.NO_CHANGE;
  }

  private boolean isSofter(int from, int to, int sharpest) {
    SeriesPoint least = run.get(sharpest);
    return run.subList(from, to).stream().anyMatch(p -> p.isWider(least, CHANGE_SIGMAS));
  }

  /**
   * Positions from the field's pattern; the unit is a disc of 1 px. Positions have errors too, and
   * so have those between which best focus lies.
   */
  private Optional<Reading> byField() {
    List<FieldPattern> patterns =
        run.stream().flatMap(p -> FieldPattern.of(p.field()).stream()).toList();
    if (patterns.size() < run.size() || run.size() < settings.leastFrames()) {
      return Optional.empty();
    }
    return FieldAxis.of(patterns).flatMap(this::onAxis);
  }

  private Optional<Reading> onAxis(List<Double> axis) {
    double most =
        new ChiSquaredDistribution(axis.size() - 3).inverseCumulativeProbability(1 - BY_CHANCE);
    return SeriesFit.measured(axis, levels)
        .map(SeriesFit::curve)
        .filter(curve -> curve.misfit() <= most)
        .filter(curve -> isInside(axis, curve))
        .map(curve -> inDiscs(axis, curve));
  }

  private Reading inDiscs(List<Double> axis, Parabola curve) {
    double discPx = 4 * Math.sqrt(curve.curvaturePx2());
    double start = axis.stream().min(Comparator.naturalOrder()).orElse(0.0);
    List<Double> positions = axis.stream().map(p -> discPx * (p - start)).toList();
    Parabola scaled =
        new Parabola(
            discPx * (curve.at() - start),
            discPx * curve.atError(),
            curve.leastPx2(),
            curve.leastErrorPx2(),
            1 / 16.0,
            curve.misfit(),
            0);
    return reading(Steps.FROM_FIELD, positions, scaled);
  }
}
