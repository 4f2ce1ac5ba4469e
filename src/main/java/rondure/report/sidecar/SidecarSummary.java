package rondure.report.sidecar;

import java.util.List;
import java.util.stream.Stream;

/**
 * What became of the sidecars of a run.
 *
 * @param settings what was asked for
 * @param inResults sidecars in the folder of the results
 * @param made new sidecars next to pictures
 * @param changed sidecars next to pictures that were there and now say more
 * @param unchanged sidecars next to pictures that said all of it already
 * @param ratingsKept ratings of people that stayed
 * @param findings one line for each sidecar that is new, changed, or keeps a rating
 * @param troubles one sentence for each that was left alone
 * @param remarks one sentence for each in which a rating of a person stayed
 */
public record SidecarSummary(
    SidecarSettings settings,
    int inResults,
    int made,
    int changed,
    int unchanged,
    int ratingsKept,
    List<String> findings,
    List<String> troubles,
    List<String> remarks) {
  public SidecarSummary {
    findings = List.copyOf(findings);
    troubles = List.copyOf(troubles);
    remarks = List.copyOf(remarks);
  }

  /** A run that was asked for none. */
  public static SidecarSummary none() {
    return new SidecarSummary(
        SidecarSettings.none(), 0, 0, 0, 0, 0, List.of(), List.of(), List.of());
  }

  /** What the log says of them: nothing that would be otherwise in a second run. */
  public List<String> logLines() {
    return Stream.concat(troubles.stream(), remarks.stream()).toList();
  }
}
