package rondure.night;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.blur.Cause;
import rondure.blur.Verdict;
import rondure.intake.Fact;
import rondure.stars.StarField;

/**
 * A measured frame as a point of a focus curve.
 *
 * @param place its index in NightBook.frames
 * @param order its place among the frames of its scene, measured or not, from 0
 * @param noisePx2 standard error of the mean second moment of its stars from the noise of the
 *     pixels
 * @param smear median tensor, for what is stretched
 * @param otherOdds how likely it is soft by shake or haze; empty where nothing judged it
 * @param seconds start of the exposure, where it is known
 * @param fNumber where it is known
 * @param field its stars
 */
record SeriesPoint(
    int place,
    int order,
    double noisePx2,
    Moments smear,
    Optional<Double> otherOdds,
    Optional<Double> seconds,
    Optional<Double> fNumber,
    StarField field) {

  /** What star shapes of one frame have alike beside their noise: common practice, 2 %. */
  private static final double SHARED_ERROR = 0.02;

  private static final double PIXEL_BOX_PX2 = 1 / 12.0;

  /** The measured frames of a scene, in time order. */
  static List<SeriesPoint> of(Scene scene, List<NightFrame> frames) {
    List<SeriesPoint> points = new ArrayList<>();
    for (int order = 0; order < scene.frames().size(); order++) {
      int place = scene.frames().get(order);
      NightFrame frame = frames.get(place);
      if (frame.shape().isPresent() && frame.measurement().isPresent()) {
        points.add(of(frame, place, order));
      }
    }
    return points;
  }

  private static SeriesPoint of(NightFrame frame, int place, int order) {
    Moments smear = frame.shape().orElseThrow().moments();
    StarField field = frame.measurement().orElseThrow().field();
    return new SeriesPoint(
        place,
        order,
        noisePx2(field),
        smear,
        frame.verdict().map(SeriesPoint::otherOdds),
        frame
            .facts()
            .captureTime()
            .map(time -> time.local().toInstant(ZoneOffset.UTC).toEpochMilli() / 1000.0),
        frame.facts().fNumber().map(Fact::value),
        field);
  }

  private static double otherOdds(Verdict verdict) {
    return verdict.probabilities().get(Cause.TRIPOD) + verdict.probabilities().get(Cause.HAZE);
  }

  private static double noisePx2(StarField field) {
    double sum =
        field.stars().stream()
            .mapToDouble(s -> s.xxErrorPx2() * s.xxErrorPx2() + s.yyErrorPx2() * s.yyErrorPx2())
            .sum();
    return Math.max(1e-6, Math.sqrt(sum) / (2 * field.stars().size()));
  }

  /** Second moment across any smear: without the sky's trail and without most of a shake. */
  double acrossPx2() {
    return Math.max(PIXEL_BOX_PX2, smear.minorPx2());
  }

  /** Standard error of the moment across, with what the stars of a frame have alike. */
  double acrossErrorPx2() {
    return Math.hypot(noisePx2, SHARED_ERROR * acrossPx2());
  }

  /** Whether it is wider than another by more than so many standard errors. */
  boolean isWider(SeriesPoint other, double sigmas) {
    return acrossPx2() - other.acrossPx2()
        > sigmas * Math.hypot(acrossErrorPx2(), other.acrossErrorPx2());
  }
}
