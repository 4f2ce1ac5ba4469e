package rondure.intake;

import java.nio.file.Path;
import java.util.Objects;

/**
 * A picture file of the set.
 *
 * @param path where it is
 * @param relativeName its name below the input folder, forward slashes
 * @param formatByName what its extension says
 */
public record FoundFile(Path path, String relativeName, ImageFormat formatByName) {
  public FoundFile {
    Objects.requireNonNull(path, "path");
    Objects.requireNonNull(relativeName, "relativeName");
    Objects.requireNonNull(formatByName, "formatByName");
  }
}
