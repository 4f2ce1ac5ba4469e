package rondure.cli;

import java.util.ArrayList;
import java.util.List;
import rondure.report.sidecar.SidecarSummary;

/** What a run says of the sidecars it was asked for. */
final class SidecarWords {
  private static final int TROUBLES_TOLD = 10;
  private static final String WHO_READS_THEM =
      "Most photo managers read sidecars only for proprietary RAW files, not for DNG, TIFF or JPEG;"
          + " keep.txt lists the frames to keep of every kind.";

  private final SidecarSummary summary;

  SidecarWords(SidecarSummary summary) {
    this.summary = summary;
  }

  void tell(Terminal terminal) {
    if (!summary.settings().areWanted()) {
      return;
    }
    boolean dry = summary.settings().dryRun();
    if (dry) {
      summary.findings().forEach(terminal::tell);
    }
    int told = dry ? Integer.MAX_VALUE : TROUBLES_TOLD;
    summary.troubles().stream().limit(told).forEach(terminal::warn);
    if (summary.troubles().size() > told) {
      int more = summary.troubles().size() - told;
      terminal.warn("So were " + more + " more; run.log names them all.");
    }
    terminal.tell((dry ? "Sidecars, if they were written: " : "Sidecars: ") + counts() + ".");
    terminal.tell(WHO_READS_THEM);
  }

  /** For instance "12 new, 3 changed, 1 left alone; 2 ratings of yours stay". */
  private String counts() {
    List<String> parts = new ArrayList<>();
    add(parts, summary.inResults(), "in the results");
    add(parts, summary.made(), "new beside the photographs");
    add(parts, summary.changed(), "changed there");
    add(parts, summary.unchanged(), "right already");
    add(parts, summary.troubles().size(), summary.troubles().size() == 1 ? "trouble" : "troubles");
    String all = parts.isEmpty() ? "none, since no frame has a grade" : String.join(", ", parts);
    int kept = summary.ratingsKept();
    String stays = kept == 1 ? "; 1 rating of yours stays" : "; " + kept + " ratings of yours stay";
    return kept == 0 ? all : all + stays;
  }

  private static void add(List<String> parts, int count, String kind) {
    if (count > 0) {
      parts.add(count + " " + kind);
    }
  }
}
