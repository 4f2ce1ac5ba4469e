package rondure;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rondure.night.FrameStatus;
import rondure.night.NightBook;
import rondure.report.sidecar.SidecarSummary;

/**
 * How a run ended.
 *
 * @param book the night
 * @param outputFolder where the results are, absolute; none when nothing was to be written
 * @param sidecars what became of them
 * @param movedAside files in the output folder that were not ours, a sentence for each
 */
public record RunSummary(
    NightBook book, Optional<Path> outputFolder, SidecarSummary sidecars, List<String> movedAside) {

  public RunSummary {
    movedAside = List.copyOf(movedAside);
  }

  /** Frames that were measured but, because of a fault of this program, not explained. */
  public int unexplainedCount() {
    return (int)
        book.frames().stream()
            .filter(frame -> frame.status() == FrameStatus.MEASURED && frame.verdict().isEmpty())
            .count();
  }

  /** Frames that could not be read. */
  public int unreadableCount() {
    return (int)
        book.frames().stream().filter(frame -> frame.status() == FrameStatus.UNREADABLE).count();
  }
}
