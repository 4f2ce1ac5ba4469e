package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rondure.night.FocusSeries.Steps;

/**
 * The frames of one focus test series.
 *
 * @param curve those that pass best focus in one direction, in time order
 * @param onTheWay those before and after, in which the focus went to where it begins or back
 */
record SeriesRun(List<SeriesPoint> curve, List<SeriesPoint> onTheWay) {
  SeriesRun {
    curve = List.copyOf(curve);
    onTheWay = List.copyOf(onTheWay);
  }

  int firstPlace() {
    return places().min().orElseThrow();
  }

  int lastPlace() {
    return places().max().orElseThrow();
  }

  private IntStream places() {
    return Stream.concat(curve.stream(), onTheWay.stream()).mapToInt(SeriesPoint::place);
  }

  /**
   * A recognised series: a frame beside the valley belongs to it while the focus still moves, that
   * is until the frame after it is alike.
   *
   * @param points of the scene
   */
  static SeriesRun of(List<SeriesPoint> points, Valley valley, SeriesSettings settings) {
    List<SeriesPoint> onTheWay = new ArrayList<>();
    for (int direction : new int[] {-1, 1}) {
      int end = direction < 0 ? valley.first() : valley.last();
      for (int k = 1; k <= valley.size(); k++) {
        int at = end + k * direction;
        int next = at + direction;
        boolean moves =
            Math.min(at, next) >= 0
                && Math.max(at, next) < points.size()
                && isLower(points.get(at), points.get(at - direction), settings)
                && isLower(points.get(next), points.get(at), settings);
        if (!moves) {
          break;
        }
        onTheWay.add(points.get(at));
      }
    }
    onTheWay.sort(Comparator.comparingInt(SeriesPoint::place));
    return new SeriesRun(points.subList(valley.first(), valley.last() + 1), onTheWay);
  }

  private static boolean isLower(SeriesPoint one, SeriesPoint other, SeriesSettings settings) {
    return other.isWider(one, settings.stepSigmas());
  }

  /**
   * A named series: all of it, or where that is on no curve, as the focus went there or back too,
   * the valley about its sharpest frame.
   */
  static SeriesRun named(List<SeriesPoint> run, SeriesSettings settings) {
    SeriesRun whole = new SeriesRun(run, List.of());
    if (SeriesReading.of(run, settings).steps() != Steps.UNKNOWN) {
      return whole;
    }
    return Valley.about(SeriesPlans.sharpest(run), run, settings)
        .map(valley -> part(run, valley))
        .filter(part -> SeriesReading.of(part.curve(), settings).steps() != Steps.UNKNOWN)
        .orElse(whole);
  }

  private static SeriesRun part(List<SeriesPoint> run, Valley valley) {
    List<SeriesPoint> curve = run.subList(valley.first(), valley.last() + 1);
    return new SeriesRun(curve, run.stream().filter(point -> !curve.contains(point)).toList());
  }
}
