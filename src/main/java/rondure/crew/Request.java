package rondure.crew;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

/**
 * What the crew asks of a worker.
 *
 * @param id number that the answer repeats
 * @param work what to do
 * @param file the file as a URI: exact for any bytes in a file name, whatever the locale
 * @param facts for measuring
 * @param settings for measuring
 */
record Request(
    long id, Work work, String file, Optional<ShotFacts> facts, Optional<StarSettings> settings) {

  /** What to do. */
  enum Work {
    FACTS,
    /** Which bytes the file holds. */
    DIGEST,
    MEASURE
  }

  Request {
    Objects.requireNonNull(work, "work");
    Objects.requireNonNull(file, "file");
  }

  static Request facts(long id, Path file) {
    String uri = file.toUri().toString();
    return new Request(id, Work.FACTS, uri, Optional.empty(), Optional.empty());
  }

  static Request digest(long id, Path file) {
    String uri = file.toUri().toString();
    return new Request(id, Work.DIGEST, uri, Optional.empty(), Optional.empty());
  }

  static Request measure(long id, MeasureJob job, StarSettings settings) {
    String uri = job.path().toUri().toString();
    return new Request(id, Work.MEASURE, uri, Optional.of(job.facts()), Optional.of(settings));
  }
}
