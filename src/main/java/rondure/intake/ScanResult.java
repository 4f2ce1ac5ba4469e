package rondure.intake;

import java.util.List;
import java.util.Map;

/**
 * What a scan found.
 *
 * @param files pictures in natural order
 * @param ignoredCounts files seen but not read: "video", "sidecar", "other"
 * @param troubles folders or files that could not be looked at, one sentence each
 */
public record ScanResult(
    List<FoundFile> files, Map<String, Integer> ignoredCounts, List<String> troubles) {
  public ScanResult {
    files = List.copyOf(files);
    ignoredCounts = Map.copyOf(ignoredCounts);
    troubles = List.copyOf(troubles);
  }
}
