package rondure.report.sidecar;

import java.nio.file.Path;
import java.util.Objects;

/**
 * Where a sidecar of a picture is, or is to be.
 *
 * @param name its path relative to the input, forward slashes
 * @param path where that is
 * @param isThere whether something of that name is there already
 */
record SidecarPlace(String name, Path path, boolean isThere) {
  SidecarPlace {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(path, "path");
  }
}
