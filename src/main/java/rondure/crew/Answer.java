package rondure.crew;

import java.util.Objects;
import java.util.Optional;
import rondure.intake.ShotFacts;

/**
 * What a worker says.
 *
 * @param id number of the request; 0 for READY
 * @param kind what it says
 * @param text the sentence of a PROBLEM, the description of a FAULT, else empty
 * @param facts when DONE with reading facts
 * @param measurement when DONE with measuring
 * @param contentDigest when DONE with a digest; when DONE with measuring, of the bytes that were
 *     measured, empty where they changed meanwhile or are not digested
 */
record Answer(
    long id,
    Kind kind,
    String text,
    Optional<ShotFacts> facts,
    Optional<FrameMeasurement> measurement,
    Optional<String> contentDigest) {

  /** What a worker says. */
  enum Kind {
    /** Started, waiting for requests. */
    READY,
    DONE,
    /** A bad frame, said in one sentence. */
    PROBLEM,
    /** A fault of the program; the worker can go on. */
    FAULT,
    /** The heap is full; the worker should be replaced. */
    NEEDS_MEMORY
  }

  Answer {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(text, "text");
  }

  static Answer of(long id, Kind kind, String text) {
    return new Answer(id, kind, text, Optional.empty(), Optional.empty(), Optional.empty());
  }

  static Answer done(long id, ShotFacts facts) {
    return new Answer(id, Kind.DONE, "", Optional.of(facts), Optional.empty(), Optional.empty());
  }

  static Answer done(long id, FrameMeasurement measurement, Optional<String> contentDigest) {
    return new Answer(id, Kind.DONE, "", Optional.empty(), Optional.of(measurement), contentDigest);
  }

  static Answer done(long id, String contentDigest) {
    return new Answer(
        id, Kind.DONE, "", Optional.empty(), Optional.empty(), Optional.of(contentDigest));
  }
}
