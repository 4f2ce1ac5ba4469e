package rondure.report;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.IntStream;
import rondure.base.RobustStats;
import rondure.intake.CaptureTime;
import rondure.night.NightFrame;

/** Where the night stood still so long, or another scene began, that no line joins two frames. */
final class LongPause {
  private static final double USUAL_STEPS = 6;
  private static final double LEAST_SECONDS = 300;

  private LongPause() {}

  /** Whether a break comes before each frame; the first has none. */
  static boolean[] before(List<NightFrame> frames) {
    double[] steps =
        IntStream.range(1, frames.size())
            .mapToDouble(i -> seconds(frames.get(i - 1), frames.get(i)))
            .toArray();
    double most =
        steps.length == 0 ? 0 : Math.max(LEAST_SECONDS, USUAL_STEPS * RobustStats.median(steps));
    boolean[] before = new boolean[frames.size()];
    for (int i = 1; i < before.length; i++) {
      before[i] = steps[i - 1] > most || isOtherScene(frames.get(i - 1), frames.get(i));
    }
    return before;
  }

  private static boolean isOtherScene(NightFrame one, NightFrame two) {
    return one.sceneNumber().isPresent()
        && two.sceneNumber().isPresent()
        && !one.sceneNumber().equals(two.sceneNumber());
  }

  /** Zero where a time is not known. */
  private static double seconds(NightFrame one, NightFrame two) {
    List<LocalDateTime> times =
        List.of(one, two).stream()
            .flatMap(frame -> frame.facts().captureTime().stream())
            .map(CaptureTime::local)
            .toList();
    return times.size() < 2 ? 0 : Duration.between(times.get(0), times.get(1)).toSeconds();
  }
}
