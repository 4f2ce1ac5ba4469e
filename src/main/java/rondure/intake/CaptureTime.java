package rondure.intake;

import java.time.LocalDateTime;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * The start of an exposure by the camera's clock, after any clock shift.
 *
 * @param local wall-clock time
 * @param offsetSeconds seconds east of UTC when the file says so
 * @param subSecondsKnown whether the fraction of a second was recorded
 * @param source where it came from
 */
public record CaptureTime(
    LocalDateTime local, OptionalInt offsetSeconds, boolean subSecondsKnown, Fact.Source source) {

  public CaptureTime {
    Objects.requireNonNull(local, "local");
    Objects.requireNonNull(offsetSeconds, "offsetSeconds");
    Objects.requireNonNull(source, "source");
  }
}
