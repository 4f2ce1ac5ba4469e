package rondure.intake;

import java.util.List;
import java.util.Map;

/**
 * What a scan found.
 *
 * @param files pictures in natural order
 * @param leftOut names of files seen but not read, by kind: "video", "sidecar", "other"; "special"
 *     for pipes, sockets and devices; "hidden"; "again" for further ways to a file taken already
 * @param troubles folders or files that could not be looked at, one sentence each
 */
public record ScanResult(
    List<FoundFile> files, Map<String, List<String>> leftOut, List<String> troubles) {
  public ScanResult {
    files = List.copyOf(files);
    leftOut = Map.copyOf(leftOut);
    troubles = List.copyOf(troubles);
  }
}
