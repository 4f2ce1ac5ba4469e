package rondure.crew;

import java.nio.file.Path;
import java.util.Objects;
import rondure.intake.ShotFacts;

/**
 * One file to be decoded and measured.
 *
 * @param path the file
 * @param facts what is known of it; its width and height decide how much memory and time it gets
 */
public record MeasureJob(Path path, ShotFacts facts) {
  public MeasureJob {
    Objects.requireNonNull(path, "path");
    Objects.requireNonNull(facts, "facts");
  }
}
