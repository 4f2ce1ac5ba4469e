package rondure.sky;

import java.util.List;
import java.util.Optional;

/**
 * When the frames of a scene were taken.
 *
 * @param midSeconds middle of each frame's exposure on one clock; empty where it is not known; no
 *     entries at all: no clock
 * @param stepSeconds how finely the clock tells the time: 1 without sub-seconds
 */
public record SceneClock(List<Optional<Double>> midSeconds, double stepSeconds) {

  /** No frame's time is known. */
  public static final SceneClock NONE = new SceneClock(List.of(), 1);

  public SceneClock {
    midSeconds = List.copyOf(midSeconds);
    midSeconds.forEach(one -> one.ifPresent(SceneClock::finite));
    if (!(stepSeconds > 0 && Double.isFinite(stepSeconds))) {
      throw new IllegalArgumentException("stepSeconds must be > 0, was " + stepSeconds);
    }
  }

  private static void finite(double seconds) {
    if (!Double.isFinite(seconds)) {
      throw new IllegalArgumentException("midSeconds must be finite, was " + seconds);
    }
  }

  /** Time of a frame. */
  public Optional<Double> secondsOf(int frame) {
    return frame < midSeconds.size() ? midSeconds.get(frame) : Optional.empty();
  }
}
