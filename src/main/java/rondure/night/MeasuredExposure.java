package rondure.night;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.intake.ShotFacts;

/**
 * One exposure of the set as measured.
 *
 * @param file path relative to the input, forward slashes
 * @param copies other files of the same exposure
 * @param facts after the user's overrides and clock shift
 * @param outcome the measurement, or why there is none
 */
public record MeasuredExposure(
    String file, List<String> copies, ShotFacts facts, Outcome<FrameMeasurement> outcome) {
  public MeasuredExposure {
    Objects.requireNonNull(file, "file");
    copies = List.copyOf(copies);
    Objects.requireNonNull(facts, "facts");
    Objects.requireNonNull(outcome, "outcome");
  }

  Optional<FrameMeasurement> measurement() {
    return outcome instanceof Outcome.Done<FrameMeasurement> done
        ? Optional.of(done.answer())
        : Optional.empty();
  }

  /** Stored width: of the pixels when they were read, else by the header. */
  int widthPx() {
    return measurement().map(m -> m.field().widthPx()).orElse(facts.widthPx());
  }

  int heightPx() {
    return measurement().map(m -> m.field().heightPx()).orElse(facts.heightPx());
  }
}
