package rondure;

import java.nio.file.Path;
import rondure.night.FrameStatus;
import rondure.night.NightBook;

/**
 * How a run ended.
 *
 * @param book the night
 * @param outputFolder where the results are, absolute
 */
public record RunSummary(NightBook book, Path outputFolder) {

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
