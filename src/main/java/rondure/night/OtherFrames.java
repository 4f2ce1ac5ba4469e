package rondure.night;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.night.FocusSeries.Curve;
import rondure.night.FocusSeries.Others;
import rondure.night.FocusSeries.Side;

/** Where the focus of frames is that are in no series: how far off by width, which way by field. */
final class OtherFrames {
  private static final int LEAST_FRAMES = 3;

  /** The nearest tell where the focus was left; it may creep later. */
  private static final int MOST_FRAMES = 20;

  private static final double SIGMAS = 2;
  private static final double SIDE_SIGMAS = 3;

  /** √(π/2), of a median. */
  private static final double MEDIAN_ERROR_FACTOR = Math.sqrt(Math.PI / 2);

  /** Focus widens a star by less than this share of the moment: called best. */
  private static final double NEARLY_BEST = 0.05;

  private final List<SeriesPoint> run;
  private final SeriesReading.Reading reading;

  OtherFrames(List<SeriesPoint> run, SeriesReading.Reading reading) {
    this.run = run;
    this.reading = reading;
  }

  /**
   * Empty for too few frames and where the series has no curve.
   *
   * @param others frames of one stretch before or after the series
   */
  Optional<Others> place(List<SeriesPoint> others, boolean after) {
    List<SeriesPoint> alike =
        others.stream().filter(p -> p.fNumber().equals(run.get(0).fNumber())).toList();
    int from = after ? 0 : Math.max(0, alike.size() - MOST_FRAMES);
    int to = after ? Math.min(alike.size(), MOST_FRAMES) : alike.size();
    return to - from < LEAST_FRAMES
        ? Optional.empty()
        : reading.curve().map(curve -> place(alike.subList(from, to), after, curve));
  }

  private Others place(List<SeriesPoint> others, boolean after, Curve curve) {
    double[] px2 = others.stream().mapToDouble(SeriesPoint::acrossPx2).toArray();
    double[] errors = others.stream().mapToDouble(SeriesPoint::acrossErrorPx2).toArray();
    double noise =
        MEDIAN_ERROR_FACTOR
            * Math.max(RobustStats.madSigma(px2), RobustStats.median(errors))
            / Math.sqrt(px2.length);
    double leastPx2 = leastAcrossPx2(curve);
    double excess = RobustStats.median(px2) - leastPx2;
    double doubt = SIGMAS * Math.hypot(noise, RobustStats.median(errors));
    if (excess <= Math.max(doubt, NEARLY_BEST * leastPx2)) {
      return new Others(
          after, px2.length, Side.AT_BEST, 4 * Math.sqrt(Math.max(0, excess) + doubt));
    }
    return new Others(after, px2.length, side(others, curve), 4 * Math.sqrt(excess));
  }

  /** At best focus, across the trail: other frames may have another. */
  private double leastAcrossPx2(Curve curve) {
    double[] positions = reading.positions().stream().mapToDouble(p -> p).toArray();
    double[] px2 = run.stream().mapToDouble(SeriesPoint::acrossPx2).toArray();
    double[] errors = run.stream().mapToDouble(SeriesPoint::acrossErrorPx2).toArray();
    double sharpest = Arrays.stream(px2).min().orElseThrow();
    return Parabola.fit(positions, px2, errors)
        .map(Parabola::leastPx2)
        .filter(least -> least > 0 && least < 1.1 * sharpest)
        .orElse(Math.min(sharpest, curve.leastPx2()));
  }

  private Side side(List<SeriesPoint> others, Curve curve) {
    List<FieldPattern> own = patterns(run);
    List<FieldPattern> theirs = patterns(others);
    if (own.size() < run.size() || theirs.size() < LEAST_FRAMES) {
      return Side.UNTOLD;
    }
    Optional<FieldSides> sides = FieldSides.of(reading.positions(), own);
    if (sides.isEmpty()) {
      return Side.UNTOLD;
    }
    List<FieldSides.Position> places = theirs.stream().map(sides.get()::position).toList();
    double[] at = places.stream().mapToDouble(FieldSides.Position::at).toArray();
    double[] errors = places.stream().mapToDouble(FieldSides.Position::error).toArray();
    double off = RobustStats.median(at) - curve.at();
    double single = Math.max(RobustStats.madSigma(at), RobustStats.median(errors));
    // Frames share the stars and the lens: their errors do not average out to nothing.
    double error = Math.hypot(single / Math.sqrt(Math.min(4, at.length)), curve.atError());
    if (Math.abs(off) < SIDE_SIGMAS * error) {
      return Side.UNTOLD;
    }
    return off < 0 ? Side.TOWARDS_FIRST : Side.TOWARDS_LAST;
  }

  private static List<FieldPattern> patterns(List<SeriesPoint> points) {
    return points.stream().flatMap(p -> FieldPattern.of(p.field()).stream()).toList();
  }
}
