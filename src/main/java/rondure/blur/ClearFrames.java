package rondure.blur;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import rondure.base.RobustStats;

/** What the clear frames among those linked by shared stars lost: from there losses are counted. */
final class ClearFrames {
  /** Not the least: a lucky few would make all others hazy. */
  static final double REFERENCE = 0.25;

  /**
   * Of what the middle frame lost, beside the brightest: the next one's where light changes
   * steadily.
   */
  private static final double STEADY_SHARE = 0.5;

  private static final int FEW_FRAMES = 3;

  private static final double PLAIN_STEP_MAG = 0.05;
  private static final double SURE_SIGMAS = 2;

  /** Steps of a steady fall; a cloud comes all at once. */
  private static final double MOST_UNLIKE = 2.5;

  private ClearFrames() {}

  /**
   * The loss of the clear frames: the 25th percentile. Where the light changes steadily it is that
   * of the brightest frame, its error allowed for: dew that grows leaves few frames clear. That is
   * so where the second brightest comes next to the brightest in time and has lost at most half of
   * what the middle frame lost; three frames are too few to tell, and the brightest is their
   * measure.
   *
   * @param lossMag of frames that are linked, in time order
   * @param errorMag their errors
   */
  static double lossMag(double[] lossMag, double[] errorMag) {
    double usual = RobustStats.percentile(REFERENCE, lossMag);
    List<Integer> order =
        IntStream.range(0, lossMag.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> lossMag[i] + errorMag[i]))
            .toList();
    int first = order.get(0);
    int second = order.get(1);
    double toMiddle = RobustStats.median(lossMag) - lossMag[first];
    boolean steady =
        Math.abs(first - second) == 1
            && lossMag[second] - lossMag[first] <= STEADY_SHARE * toMiddle;
    return steady || lossMag.length <= FEW_FRAMES
        ? Math.min(usual, lossMag[first] + errorMag[first])
        : usual;
  }

  /**
   * Light that three frames lost in two steps plain and alike, 0 where they did not: what took it
   * hardly began with the first of them, and no clear frame is there to tell.
   *
   * @param lossMag of frames that are linked, in time order
   * @param errorMag their errors
   */
  static double fallMag(double[] lossMag, double[] errorMag) {
    if (lossMag.length != FEW_FRAMES) {
      return 0;
    }
    double first = lossMag[1] - lossMag[0];
    double second = lossMag[2] - lossMag[1];
    double least =
        Math.max(PLAIN_STEP_MAG, SURE_SIGMAS * Arrays.stream(errorMag).max().orElseThrow());
    boolean steady =
        Math.min(first, second) >= least
            && Math.max(first, second) <= MOST_UNLIKE * Math.min(first, second);
    return steady ? first + second : 0;
  }
}
