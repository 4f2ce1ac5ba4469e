package rondure.intake;

import java.util.Objects;

/**
 * A known value and where it came from.
 *
 * @param <T> the type of the value
 */
public record Fact<T>(T value, Source source) {

  /** Where a fact came from. */
  public enum Source {
    /** Written into the file by the camera or the developing program. */
    FILE,
    /** Given by the user on the command line. */
    OPTION,
    /** Computed from other facts of the same file (35 mm equivalent, focal-plane resolution). */
    DERIVED,
    /** Looked up in the small sourced table of sensors. */
    TABLE,
    /** Shared by all other frames of the folder; the file itself says nothing. */
    FOLDER
  }

  /** A value that the file itself tells. */
  static <T> Fact<T> ofFile(T value) {
    return new Fact<>(value, Source.FILE);
  }

  /** A value that the user gave. */
  static <T> Fact<T> given(T value) {
    return new Fact<>(value, Source.OPTION);
  }

  public Fact {
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(source, "source");
  }
}
