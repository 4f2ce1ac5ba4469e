package rondure.cli;

import picocli.CommandLine.Option;
import rondure.report.sidecar.SidecarSettings;

/** Which XMP sidecars to write. */
final class SidecarOptions {
  @Option(
      names = "--sidecars",
      description = "also write XMP sidecars, into the folder sidecars of the results")
  private boolean inResults;

  @Option(
      names = "--sidecars-beside",
      description =
          "write XMP sidecars next to the photographs, merged with those that are there; what a"
              + " sidecar was before stays as one backup")
  private boolean beside;

  @Option(
      names = "--replace-ratings",
      description = "sidecars: put our rating in the place of one that is there")
  private boolean replaceRatings;

  @Option(
      names = "--dry-run",
      description =
          "sidecars: say what they would say, from what was measured before where it is kept, and"
              + " write nothing, no report either")
  private boolean dryRun;

  /**
   * @throws IllegalArgumentException when an option needs another
   */
  SidecarSettings settings() {
    return new SidecarSettings(inResults, beside, replaceRatings, dryRun);
  }
}
