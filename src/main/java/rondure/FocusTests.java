package rondure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rondure.intake.FoundFile;
import rondure.night.FocusSeries;
import rondure.night.NamedSeries;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/** Refuses named focus test series that cannot be what was meant. */
final class FocusTests {
  private static final int LEAST_FRAMES = 3;
  private static final int MOST_FRAMES = 100;

  private FocusTests() {}

  /**
   * The series by the whole relative names of their pictures; told before anything is measured.
   *
   * @throws CommandProblem when a name is not that of one picture
   */
  static List<NamedSeries> resolved(List<NamedSeries> tests, List<FoundFile> files)
      throws CommandProblem {
    List<NamedSeries> resolved = new ArrayList<>();
    for (NamedSeries test : tests) {
      String first = picture(test.firstFile(), files);
      String last = picture(test.lastFile(), files);
      if (first.equals(last)) {
        throw new CommandProblem("--focus-test: first and last picture are both " + first + ".");
      }
      resolved.add(new NamedSeries(first, last));
    }
    return resolved;
  }

  private static String picture(String name, List<FoundFile> files) throws CommandProblem {
    String given = name.replace('\\', '/');
    List<String> all = files.stream().map(FoundFile::relativeName).toList();
    List<String> named =
        all.contains(given)
            ? List.of(given)
            : all.stream().filter(file -> file.endsWith("/" + given)).toList();
    if (named.isEmpty()) {
      throw new CommandProblem("--focus-test: there is no picture " + name + " in the folder.");
    }
    if (named.size() > 1) {
      throw new CommandProblem(
          "--focus-test: "
              + named.size()
              + " pictures are called "
              + name
              + "; give the path from the folder, such as "
              + named.get(0)
              + ".");
    }
    return named.get(0);
  }

  /** A series lies in one scene and has frames enough; two share none. */
  static void checkFrames(List<NamedSeries> tests, NightBook book) throws CommandProblem {
    Set<Integer> taken = new HashSet<>();
    for (NamedSeries test : tests) {
      String between = "--focus-test: from " + test.firstFile() + " to " + test.lastFile() + " ";
      List<Integer> ends = ends(test, book);
      int first = ends.get(0);
      int last = ends.get(ends.size() - 1);
      List<Integer> frames =
          book.focusSeries().stream()
              .filter(FocusSeries::named)
              .flatMap(series -> series.members().stream())
              .filter(frame -> frame >= first && frame <= last)
              .toList();
      if (!scene(book, first).equals(scene(book, last))) {
        throw new CommandProblem(between + "the frames are not of one scene.");
      }
      if (frames.size() < LEAST_FRAMES) {
        throw new CommandProblem(
            between + "fewer than " + LEAST_FRAMES + " frames could be measured.");
      }
      if (frames.size() > MOST_FRAMES) {
        throw new CommandProblem(
            between + "there are " + frames.size() + " frames, too many for a test of the focus.");
      }
      if (!frames.stream().allMatch(taken::add)) {
        throw new CommandProblem(between + "there are frames of another series that you named.");
      }
    }
  }

  /** Places of the frames with these names, in order; copies count as their frame. */
  private static List<Integer> ends(NamedSeries test, NightBook book) {
    List<Integer> ends = new ArrayList<>();
    for (int i = 0; i < book.frames().size(); i++) {
      if (test.isEnd(book.frames().get(i))) {
        ends.add(i);
      }
    }
    return ends;
  }

  private static Object scene(NightBook book, int place) {
    NightFrame frame = book.frames().get(place);
    return frame.sceneNumber().isPresent() ? frame.sceneNumber() : "none " + place;
  }
}
