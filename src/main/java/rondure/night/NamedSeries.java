package rondure.night;

import java.util.Objects;

/**
 * A focus test series that the user named by its first and its last picture.
 *
 * @param firstFile path relative to the input, forward slashes, or the file's own name
 * @param lastFile the same
 */
public record NamedSeries(String firstFile, String lastFile) {
  public NamedSeries {
    Objects.requireNonNull(firstFile, "firstFile");
    Objects.requireNonNull(lastFile, "lastFile");
    if (firstFile.equals(lastFile)) {
      throw new IllegalArgumentException(
          "--focus-test needs two pictures, the first and the last of the series, and was given "
              + firstFile
              + " twice.");
    }
  }

  /** Whether a frame, or a copy of it, is the first or the last of the series. */
  public boolean isEnd(NightFrame frame) {
    return isNamed(frame, firstFile) || isNamed(frame, lastFile);
  }

  private static boolean isNamed(NightFrame frame, String name) {
    return matches(frame.file(), name)
        || frame.copies().stream().anyMatch(copy -> matches(copy, name));
  }

  /** Whether a path relative to the input is or ends in this name. */
  public static boolean matches(String file, String name) {
    String given = name.replace('\\', '/');
    return file.equals(given) || file.endsWith("/" + given);
  }
}
