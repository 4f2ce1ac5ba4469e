package rondure.night;

import java.util.Objects;

/**
 * A focus test series that the user named by its first and its last picture, in either order.
 *
 * @param firstFile its path relative to the input, forward slashes
 * @param lastFile the same
 */
public record NamedSeries(String firstFile, String lastFile) {
  public NamedSeries {
    Objects.requireNonNull(firstFile, "firstFile");
    Objects.requireNonNull(lastFile, "lastFile");
  }

  /** Whether a frame, or a copy of it, is the first or the last of the series. */
  public boolean isEnd(NightFrame frame) {
    return isNamed(frame, firstFile) || isNamed(frame, lastFile);
  }

  private static boolean isNamed(NightFrame frame, String name) {
    return frame.file().equals(name) || frame.copies().contains(name);
  }
}
