package rondure.night;

import java.util.stream.IntStream;
import rondure.base.RobustStats;

/** Where a photographer let the camera rest between two frames. */
final class Pauses {
  private Pauses() {}

  /**
   * Whether a rest comes before each frame: the shutter was closed longer than usual by more than
   * the usual time from frame to frame would take, so often over. A long exposure is no rest.
   *
   * @param startSeconds of each exposure, growing
   * @param exposureSeconds as many; 0 where unknown
   * @param ratio {@link EventSettings#pauseRatio()}
   * @return one for each frame; the first has none before it
   */
  static boolean[] before(double[] startSeconds, double[] exposureSeconds, double ratio) {
    double[] steps =
        IntStream.range(1, startSeconds.length)
            .mapToDouble(i -> startSeconds[i] - startSeconds[i - 1])
            .toArray();
    double[] closed =
        IntStream.range(0, steps.length).mapToDouble(i -> steps[i] - exposureSeconds[i]).toArray();
    boolean[] before = new boolean[startSeconds.length];
    if (steps.length > 0) {
      double most = RobustStats.median(closed) + (ratio - 1) * RobustStats.median(steps);
      IntStream.range(0, steps.length).forEach(i -> before[i + 1] = closed[i] > most);
    }
    return before;
  }
}
