package rondure.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.RunSummary;
import rondure.night.FrameStatus;
import rondure.night.Grade;
import rondure.night.NightFrame;

/** What a run says when it is done. */
final class EndWords {
  private static final int UNREADABLE_TOLD = 10;

  private final RunSummary summary;
  private final List<NightFrame> frames;

  EndWords(RunSummary summary) {
    this.summary = summary;
    this.frames = summary.book().frames();
  }

  void tell(Terminal terminal) {
    unreadable(terminal);
    unexplained(terminal);
    terminal.tell(counts());
    new SidecarWords(summary.sidecars()).tell(terminal);
    summary.movedAside().forEach(terminal::warn);
    if (summary.outputFolder().isEmpty()) {
      terminal.tell("Nothing was written.");
      return;
    }
    terminal.tell("Report: " + summary.outputFolder().get().resolve("report.pdf"));
    terminal.tell("File names are printed in the report as they are; mind that when sharing.");
    if (summary.sidecars().inResults() > 0) {
      terminal.tell("The folder sidecars also holds what your own sidecars say; mind that too.");
    }
  }

  private void unreadable(Terminal terminal) {
    List<NightFrame> bad =
        frames.stream().filter(frame -> frame.status() == FrameStatus.UNREADABLE).toList();
    bad.stream()
        .limit(UNREADABLE_TOLD)
        .forEach(frame -> terminal.warn(frame.file() + ": " + frame.reason().orElse("unreadable")));
    if (bad.size() > UNREADABLE_TOLD) {
      terminal.warn(
          (bad.size() - UNREADABLE_TOLD)
              + " more files could not be read; run.log says why for each.");
    }
  }

  private void unexplained(Terminal terminal) {
    if (summary.unexplainedCount() > 0) {
      terminal.warn(
          summary.unexplainedCount()
              + " frames were measured but not explained, because of a fault of this program;"
              + " run.log says which. Please report it.");
    }
  }

  /** For instance "20 frames: 12 keep, 6 look closer, 2 unreadable." */
  private String counts() {
    List<String> parts = new ArrayList<>();
    add(parts, graded(Grade.KEEP), "keep");
    add(parts, graded(Grade.LOOK_CLOSER), "look closer");
    add(parts, graded(Grade.SET_ASIDE), "set aside");
    add(parts, summary.unexplainedCount(), "not graded");
    add(parts, frames.stream().filter(NightFrame::isFocusTest).count(), "focus tests");
    add(parts, count(FrameStatus.TOO_FEW_STARS), "not measurable");
    long apart =
        count(FrameStatus.NOT_NIGHT)
            + count(FrameStatus.TRAILS_INTENDED)
            + count(FrameStatus.COMPOSITE);
    add(parts, apart, "not the night");
    add(parts, count(FrameStatus.UNREADABLE), "unreadable");
    String what = frames.size() == 1 ? " frame: " : " frames: ";
    return frames.size() + what + String.join(", ", parts) + ".";
  }

  private static void add(List<String> parts, long count, String kind) {
    if (count > 0) {
      parts.add(count + " " + kind);
    }
  }

  private long graded(Grade grade) {
    return frames.stream()
        .filter(
            frame ->
                frame.status() == FrameStatus.MEASURED && frame.grade().equals(Optional.of(grade)))
        .count();
  }

  private long count(FrameStatus status) {
    return frames.stream().filter(frame -> frame.status() == status).count();
  }
}
