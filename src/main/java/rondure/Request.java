package rondure;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rondure.night.NamedSeries;
import rondure.report.sidecar.SidecarSettings;

/**
 * What the user asked for.
 *
 * @param inputs folders or files
 * @param outputFolder where the results go; by default beside the first input
 * @param sidecars which sidecars to write
 * @param focusTests focus test series that the user named
 */
public record Request(
    List<Path> inputs,
    Optional<Path> outputFolder,
    SidecarSettings sidecars,
    List<NamedSeries> focusTests) {
  public Request {
    inputs = List.copyOf(inputs);
    focusTests = List.copyOf(focusTests);
    if (inputs.isEmpty()) {
      throw new IllegalArgumentException("a request needs at least one input");
    }
  }

  /** A request without sidecars and named series. */
  public Request(List<Path> inputs, Optional<Path> outputFolder) {
    this(inputs, outputFolder, SidecarSettings.none(), List.of());
  }
}
