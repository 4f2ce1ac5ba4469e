package rondure.report.sidecar;

/**
 * Which sidecars a run is to write, and how.
 *
 * @param inResults into the folder {@code sidecars} of the results
 * @param beside next to the pictures
 * @param replaceRatings whether a rating that is there gives way to ours
 * @param dryRun whether to say what would change and write nothing
 */
public record SidecarSettings(
    boolean inResults, boolean beside, boolean replaceRatings, boolean dryRun) {
  public SidecarSettings {
    if (!inResults && !beside && replaceRatings) {
      throw new IllegalArgumentException(
          "--replace-ratings says how sidecars are written; add --sidecars or --sidecars-beside.");
    }
    if (!inResults && !beside && dryRun) {
      throw new IllegalArgumentException(
          "--dry-run shows what sidecars would say; add --sidecars or --sidecars-beside.");
    }
  }

  /** No sidecars at all. */
  public static SidecarSettings none() {
    return new SidecarSettings(false, false, false, false);
  }

  public boolean areWanted() {
    return inResults || beside;
  }
}
