package rondure.report.sidecar;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rondure.base.FileTrouble;
import rondure.intake.FoundFile;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.OutputFolder;
import rondure.report.Ranking;

/** The sidecars of a night: in the results, next to the pictures, or only told. */
public final class Sidecars {
  /** The folder below the results. */
  public static final String FOLDER = "sidecars";

  private final NightBook book;
  private final SidecarSettings settings;
  private final SidecarNames names;
  private final Set<String> best;
  private final SidecarTally tally = new SidecarTally();

  /**
   * @param book the night with its grades
   * @param files every file that its frames may consist of
   * @param settings what was asked for
   */
  public Sidecars(NightBook book, List<FoundFile> files, SidecarSettings settings) {
    this.book = book;
    this.settings = settings;
    this.names = new SidecarNames(settings.areWanted() ? book.frames() : List.of(), files);
    this.best = Ranking.bestOfScenes(book);
  }

  /**
   * Writes those of the results: what is next to the pictures already, with the marks merged in.
   *
   * @throws IOException when the results cannot be written
   */
  public void writeInto(OutputFolder output) throws IOException {
    if (!settings.inResults() || settings.dryRun()) {
      return;
    }
    output.renew(FOLDER);
    visit(
        false,
        (place, merged) -> {
          byte[] bytes = merged.text().getBytes(StandardCharsets.UTF_8);
          output.write(FOLDER + "/" + place.name(), out -> out.write(bytes));
          tally.inResults(place, merged);
        });
  }

  /**
   * Writes those next to the pictures, each merged the moment before it is written. What cannot be
   * written is told and costs no other.
   *
   * @throws InterruptedIOException when the run is stopped
   */
  public void writeBeside() throws IOException {
    if (!settings.beside() || settings.dryRun()) {
      return;
    }
    try (SidecarWriter writer = new SidecarWriter()) {
      names.folders().forEach(writer::clear);
      visit(true, (place, merged) -> writeOne(writer, place, merged));
    }
  }

  /** Says what would be written, and writes nothing. */
  public void rehearse() throws IOException {
    if (settings.inResults()) {
      visit(false, tally::inResults);
    }
    if (settings.beside()) {
      visit(
          true,
          (place, merged) -> {
            if (mayBeWritten(place)) {
              tally.beside(place, merged);
            }
          });
    }
  }

  /** What has become of them so far. */
  public SidecarSummary summary() {
    return tally.summary(settings);
  }

  /** What is done with one sidecar. */
  private interface Action {
    void take(SidecarPlace place, Merged merged) throws IOException;
  }

  private void visit(boolean beside, Action action) throws IOException {
    Set<Path> served = new HashSet<>();
    for (NightFrame frame : book.frames()) {
      if (Thread.currentThread().isInterrupted()) {
        throw new InterruptedIOException("the run was stopped while it wrote sidecars");
      }
      Optional<FrameMarks> marks = FrameMarks.of(frame, best.contains(frame.file()));
      if (marks.isPresent() || beside) {
        for (SidecarPlace place : names.of(frame)) {
          if (served.add(place.path())) {
            visitOne(place, marks, action);
          }
        }
      }
    }
  }

  private void visitOne(SidecarPlace place, Optional<FrameMarks> marks, Action action)
      throws IOException {
    try {
      Optional<String> existing =
          place.isThere() ? Optional.of(ExistingSidecar.read(place.path())) : Optional.empty();
      if (marks.isPresent() || existing.filter(Sidecars::mayHoldOurs).isPresent()) {
        action.take(place, XmpMerge.merge(existing, marks, settings.replaceRatings()));
      }
    } catch (SidecarProblem problem) {
      if (marks.isPresent()) {
        tally.leftAlone(place, problem.getMessage());
      }
    }
  }

  /** A cheap look before a frame without a grade makes anybody read a sidecar to its end. */
  private static boolean mayHoldOurs(String text) {
    return text.contains(XmpMerge.OURS) || text.contains(Keywords.FIRST_WORD);
  }

  private void writeOne(SidecarWriter writer, SidecarPlace place, Merged merged)
      throws InterruptedIOException {
    try {
      if (merged.isChange() && mayBeWritten(place)) {
        writer.write(place, merged.text());
      } else if (merged.isChange()) {
        return;
      }
      tally.beside(place, merged);
    } catch (InterruptedIOException stopped) {
      throw stopped;
    } catch (IOException trouble) {
      tally.notWritten(place, FileTrouble.words(trouble));
    }
  }

  /** Notes why a sidecar cannot be written; true when nothing is known to stand against it. */
  private boolean mayBeWritten(SidecarPlace place) {
    if (!Files.isWritable(place.path().getParent())) {
      tally.closedFolder(place);
      return false;
    }
    try {
      if (place.isThere()) {
        ExistingSidecar.requireWritable(place.path());
      }
      return true;
    } catch (SidecarProblem problem) {
      tally.leftAlone(place, problem.getMessage());
      return false;
    }
  }
}
