package rondure.night;

import java.util.List;
import java.util.Optional;
import rondure.intake.CaptureTime;

/**
 * One night of the set; a gap of more than 6 h starts another.
 *
 * @param index counted from 1
 * @param start first known time
 * @param end last known time
 * @param scenes scene numbers
 * @param frameCount frames that count (measured or too few stars)
 * @param measuredCount frames measured
 * @param keepCount frames graded keep
 */
public record NightSummary(
    int index,
    Optional<CaptureTime> start,
    Optional<CaptureTime> end,
    List<Integer> scenes,
    int frameCount,
    int measuredCount,
    int keepCount) {
  public NightSummary {
    scenes = List.copyOf(scenes);
  }
}
