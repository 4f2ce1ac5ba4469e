package rondure.crew;

import java.util.Objects;

/**
 * The answer for one file, or the reason why there is none.
 *
 * @param <T> the kind of answer: {@code ShotFacts} or {@link FrameMeasurement}
 */
public sealed interface Outcome<T> {

  /** The file could be read. */
  record Done<T>(T answer) implements Outcome<T> {
    public Done {
      Objects.requireNonNull(answer, "answer");
    }
  }

  /**
   * The file could not be read or measured.
   *
   * @param reason one clear sentence: what is wrong and what to do
   */
  record Failed<T>(String reason) implements Outcome<T> {
    public Failed {
      Objects.requireNonNull(reason, "reason");
    }
  }
}
