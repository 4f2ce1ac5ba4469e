package rondure;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rondure.report.sidecar.SidecarSettings;

/**
 * What the user asked for.
 *
 * @param inputs folders or files
 * @param outputFolder where the results go; by default beside the first input
 * @param sidecars which sidecars to write
 */
public record Request(List<Path> inputs, Optional<Path> outputFolder, SidecarSettings sidecars) {
  public Request {
    inputs = List.copyOf(inputs);
    if (inputs.isEmpty()) {
      throw new IllegalArgumentException("a request needs at least one input");
    }
  }

  /** A request without sidecars. */
  public Request(List<Path> inputs, Optional<Path> outputFolder) {
    this(inputs, outputFolder, SidecarSettings.none());
  }
}
