package rondure.report.sidecar;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Counts what becomes of sidecars, and finds the words for it. */
final class SidecarTally {
  private final List<String> findings = new ArrayList<>();
  private final Set<String> troubles = new LinkedHashSet<>();
  private final Set<String> remarks = new LinkedHashSet<>();
  private final Map<String, Integer> closedFolders = new TreeMap<>();
  private int inResults;
  private int made;
  private int changed;
  private int unchanged;
  private int ratingsKept;

  void inResults(SidecarPlace place, Merged merged) {
    inResults++;
    noteRemarks(place, merged);
    findings.add(line(Sidecars.FOLDER + "/" + place.name(), "new file", merged));
  }

  void beside(SidecarPlace place, Merged merged) {
    noteRemarks(place, merged);
    if (!merged.isChange()) {
      unchanged++;
    } else if (place.isThere()) {
      changed++;
    } else {
      made++;
    }
    if (merged.isChange() || !merged.remarks().isEmpty()) {
      findings.add(line(place.name(), place.isThere() ? "" : "new file", merged));
    }
  }

  private void noteRemarks(SidecarPlace place, Merged merged) {
    ratingsKept += merged.remarks().size();
    merged.remarks().forEach(remark -> remarks.add(place.name() + ": " + remark + "."));
  }

  void leftAlone(SidecarPlace place, String reason) {
    troubles.add(place.name() + " was left alone: " + reason + ".");
  }

  void notWritten(SidecarPlace place, String reason) {
    troubles.add(place.name() + " could not be written (" + reason + ").");
  }

  /** One sentence for the folder, however many sidecars it was to hold. */
  void closedFolder(SidecarPlace place) {
    int slash = place.name().lastIndexOf('/');
    String folder = slash < 0 ? "The folder of the pictures" : place.name().substring(0, slash);
    boolean there = Files.exists(place.path().getParent());
    String what = there ? " may not be written" : " is not there any more";
    closedFolders.merge(folder + what, 1, Integer::sum);
  }

  SidecarSummary summary(SidecarSettings settings) {
    List<String> all = new ArrayList<>(troubles);
    closedFolders.forEach(
        (folder, count) ->
            all.add(
                folder
                    + ", so "
                    + (count == 1 ? "1 sidecar is" : count + " sidecars are")
                    + " missing there; --sidecars puts them into the results."));
    return new SidecarSummary(
        settings,
        inResults,
        made,
        changed,
        unchanged,
        ratingsKept,
        findings,
        all,
        List.copyOf(remarks));
  }

  private static String line(String name, String first, Merged merged) {
    List<String> parts = new ArrayList<>();
    if (!first.isEmpty()) {
      parts.add(first);
    }
    parts.addAll(merged.changes());
    parts.addAll(merged.remarks());
    return name + ": " + String.join("; ", parts);
  }
}
