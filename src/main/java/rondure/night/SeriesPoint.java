package rondure.night;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.intake.Fact;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * A measured frame as a point of a focus curve.
 *
 * @param place its index in NightBook.frames
 * @param order its place among the frames of its scene, measured or not, from 0
 * @param px2 second moment of its stars across any smear: without the sky's trail and without most
 *     of a shake
 * @param errorPx2 standard error of that
 * @param smear median tensor, for what is stretched
 * @param seconds start of the exposure, where it is known
 * @param fNumber where it is known
 * @param field its stars
 */
record SeriesPoint(
    int place,
    int order,
    double px2,
    double errorPx2,
    Moments smear,
    Optional<Double> seconds,
    Optional<Double> fNumber,
    StarField field) {

  /** What star shapes of one frame have alike beside their noise: common practice, 2 %. */
  private static final double SHARED_ERROR = 0.02;

  /** √(π/2): standard error of a median over that of a mean, for Gaussian scatter. */
  private static final double MEDIAN_ERROR_FACTOR = Math.sqrt(Math.PI / 2);

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
    Moments moments = frame.shape().orElseThrow().moments();
    StarField field = frame.measurement().orElseThrow().field();
    double px2 = Math.max(PIXEL_BOX_PX2, moments.minorPx2());
    double[] means =
        field.stars().stream().map(Star::moments).mapToDouble(Moments::meanPx2).toArray();
    double noise = MEDIAN_ERROR_FACTOR * RobustStats.madSigma(means) / Math.sqrt(means.length);
    return new SeriesPoint(
        place,
        order,
        px2,
        Math.hypot(noise, SHARED_ERROR * px2),
        moments,
        frame
            .facts()
            .captureTime()
            .map(time -> time.local().toInstant(ZoneOffset.UTC).toEpochMilli() / 1000.0),
        frame.facts().fNumber().map(Fact::value),
        field);
  }
}
