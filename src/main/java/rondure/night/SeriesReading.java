package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rondure.night.FocusSeries.Curve;
import rondure.night.FocusSeries.Ending;
import rondure.night.FocusSeries.Point;
import rondure.night.FocusSeries.Steps;

/** Reads one series: positions, parabola, best frame. */
final class SeriesReading {
  /** A sharpest frame at an end is beyond doubt when its inner neighbour is so much wider. */
  private static final double CHANGE_SIGMAS = 4;

  private static final int ROUNDS = 8;

  private final List<SeriesPoint> run;
  private final SeriesSettings settings;

  private SeriesReading(List<SeriesPoint> run, SeriesSettings settings) {
    this.run = run;
    this.settings = settings;
  }

  /**
   * What a series shows by itself.
   *
   * @param steps what is known of the positions
   * @param positions of its frames
   * @param curve the parabola, where there is one
   * @param ending where the sharpest lies
   * @param best index of the frame nearest to best focus
   */
  record Reading(
      Steps steps, List<Double> positions, Optional<Curve> curve, Ending ending, int best) {
    List<Point> points(List<SeriesPoint> run) {
      List<Point> points = new ArrayList<>();
      for (int i = 0; i < run.size(); i++) {
        SeriesPoint point = run.get(i);
        points.add(new Point(point.place(), positions.get(i), point.px2(), point.errorPx2()));
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
        ending == Ending.NO_CHANGE ? Optional.empty() : SeriesFinder.fit(run, settings);
    if (even.isPresent() && isInside(even.get().positions(), even.get().curve())) {
      Steps steps = even.get().uneven() == 0 ? Steps.EQUAL : Steps.UNEVEN;
      return reading(steps, even.get().positions(), even.get().curve());
    }
    Optional<Reading> signed = ending == Ending.NO_CHANGE ? Optional.empty() : byField();
    return signed.orElseGet(
        () -> new Reading(Steps.UNKNOWN, orders(), Optional.empty(), ending, sharpest()));
  }

  private static boolean isInside(List<Double> positions, Parabola curve) {
    double least = positions.stream().mapToDouble(p -> p).min().orElse(0);
    double most = positions.stream().mapToDouble(p -> p).max().orElse(0);
    return curve.at() > least && curve.at() < most && curve.leastPx2() > 0;
  }

  private Reading reading(Steps steps, List<Double> positions, Parabola curve) {
    int best = 0;
    for (int i = 1; i < run.size(); i++) {
      double nearer =
          Math.abs(positions.get(i) - curve.at()) - Math.abs(positions.get(best) - curve.at());
      boolean sharper = run.get(i).px2() < run.get(best).px2();
      best = nearer < -1e-9 || nearer < 1e-9 && sharper ? i : best;
    }
    Curve shown =
        new Curve(
            curve.at(), curve.atError(), curve.leastPx2(), 4 * Math.sqrt(curve.curvaturePx2()));
    return new Reading(steps, positions, Optional.of(shown), Ending.BOTH_SIDES, best);
  }

  private List<Double> orders() {
    return run.stream().map(p -> (double) (p.order() - run.get(0).order())).toList();
  }

  private int sharpest() {
    int sharpest = 0;
    for (int i = 1; i < run.size(); i++) {
      sharpest = run.get(i).px2() < run.get(sharpest).px2() ? i : sharpest;
    }
    return sharpest;
  }

  /** Softer by more than noise before and behind the sharpest, or on one side only. */
  private Ending ending() {
    int sharpest = sharpest();
    boolean before = isSofter(0, sharpest, sharpest);
    boolean behind = isSofter(sharpest + 1, run.size(), sharpest);
    if (before && behind) {
      return Ending.BOTH_SIDES;
    }
    return before ? Ending.LAST_SHARPEST : behind ? Ending.FIRST_SHARPEST : Ending.NO_CHANGE;
  }

  private boolean isSofter(int from, int to, int sharpest) {
    SeriesPoint least = run.get(sharpest);
    return run.subList(from, to).stream()
        .anyMatch(
            p ->
                p.px2() - least.px2() > CHANGE_SIGMAS * Math.hypot(p.errorPx2(), least.errorPx2()));
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

  /** A noise of 1 along the axis moves M by the slope there. */
  private Optional<Reading> onAxis(List<Double> axis) {
    double[] positions = axis.stream().mapToDouble(p -> p).toArray();
    double[] px2 = run.stream().mapToDouble(SeriesPoint::px2).toArray();
    double[] sigma = run.stream().mapToDouble(SeriesPoint::errorPx2).toArray();
    Optional<Parabola> curve = Parabola.fit(positions, px2, sigma);
    for (int round = 0; round < ROUNDS && curve.isPresent(); round++) {
      double[] wider = new double[sigma.length];
      for (int i = 0; i < wider.length; i++) {
        double slope = 2 * curve.get().curvaturePx2() * (positions[i] - curve.get().at());
        double bend = Math.sqrt(3) * curve.get().curvaturePx2();
        wider[i] = Math.sqrt(sigma[i] * sigma[i] + slope * slope + bend * bend);
      }
      curve = Parabola.fit(positions, px2, wider);
    }
    return curve
        .filter(c -> c.misfit() <= SeriesFit.mostMisfit(positions.length - 3))
        .filter(c -> isInside(axis, c))
        .map(c -> inDiscs(axis, c));
  }

  private Reading inDiscs(List<Double> axis, Parabola curve) {
    double discPx = 4 * Math.sqrt(curve.curvaturePx2());
    double start = axis.stream().min(Comparator.naturalOrder()).orElse(0.0);
    List<Double> positions = axis.stream().map(p -> discPx * (p - start)).toList();
    Parabola scaled =
        new Parabola(
            discPx * (curve.at() - start),
            discPx * Math.hypot(1, curve.atError()),
            curve.leastPx2(),
            curve.leastErrorPx2(),
            1 / 16.0,
            curve.misfit());
    return reading(Steps.FROM_FIELD, positions, scaled);
  }
}
