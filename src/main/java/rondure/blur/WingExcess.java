package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.stars.Star;

/**
 * Light beside the stars of one frame, compared with frames of the scene whose stars are as wide.
 *
 * <p>The apertures of the wing ratio grow with the stars, yet a disc, a path and a lens's own wings
 * give different ratios: only frames within {@link #ALIKE_WIDTH} of each other compare. Reference
 * is the 25th percentile, as for the light itself.
 */
final class WingExcess {
  private static final double ALIKE_WIDTH = 1.2;
  private static final int LEAST_FRAMES = 3;

  /** Fainter stars' wings drown in the sky's noise. */
  private static final double LEAST_SNR = 40;

  private static final int LEAST_STARS = 8;
  private static final int MOST_STARS = 60;
  private static final double MEDIAN_ERROR = Math.sqrt(Math.PI / 2);

  private WingExcess() {}

  /** One frame's median wing ratio, its logarithm's error, the width of its stars, its loss. */
  private record Reading(double logRatio, double error, double fwhmPx, boolean clear) {

    boolean isAlike(Reading other) {
      return Math.abs(Math.log(other.fwhmPx / fwhmPx)) < Math.log(ALIKE_WIDTH);
    }
  }

  /** The answers with the wings of the frames in which they can be told. */
  static List<FrameLight> added(List<FrameLight> lights, List<FrameEvidence> frames) {
    List<Optional<Reading>> readings = new ArrayList<>();
    for (int i = 0; i < lights.size(); i++) {
      boolean clear =
          lights.get(i).loss().map(l -> l.lossMag() < FrameLight.CLEAR_MAG).orElse(false);
      readings.add(read(frames.get(i), clear));
    }
    List<FrameLight> answers = new ArrayList<>();
    for (int i = 0; i < lights.size(); i++) {
      answers.add(lights.get(i).withWings(readings.get(i).flatMap(r -> beside(r, readings))));
    }
    return answers;
  }

  private static Optional<Reading> read(FrameEvidence frame, boolean clear) {
    List<Star> bright =
        frame.field().stars().stream()
            .filter(star -> star.snr() >= LEAST_SNR && star.wingRatio() > 0)
            .limit(MOST_STARS)
            .toList();
    if (bright.size() < LEAST_STARS || BlackSky.is(frame)) {
      return Optional.empty();
    }
    double[] logs = bright.stream().mapToDouble(star -> Math.log(star.wingRatio())).toArray();
    double[] widths = bright.stream().mapToDouble(Star::fwhmPx).toArray();
    double error = MEDIAN_ERROR * RobustStats.madSigma(logs) / Math.sqrt(logs.length);
    return Optional.of(
        new Reading(RobustStats.median(logs), error, RobustStats.median(widths), clear));
  }

  /** Beside the frames that lost no light, when there are enough; else beside all. */
  private static Optional<FrameLight.Wings> beside(Reading own, List<Optional<Reading>> readings) {
    List<Reading> alike = readings.stream().flatMap(Optional::stream).filter(own::isAlike).toList();
    List<Reading> clear = alike.stream().filter(Reading::clear).toList();
    List<Reading> compared = clear.size() >= LEAST_FRAMES ? clear : alike;
    if (compared.size() < LEAST_FRAMES) {
      return Optional.empty();
    }
    double usual =
        RobustStats.percentile(
            ClearFrames.REFERENCE, compared.stream().mapToDouble(Reading::logRatio).toArray());
    return Optional.of(new FrameLight.Wings(Math.expm1(own.logRatio() - usual), own.error()));
  }
}
