package rondure.night;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import rondure.intake.Fact;

/**
 * The measured frames of a scene in time order, as series.
 *
 * @param scene the scene
 * @param places of its measured frames in NightBook.frames
 * @param frames these frames
 */
record Course(Scene scene, List<Integer> places, List<NightFrame> frames) {
  Course {
    places = List.copyOf(places);
    frames = List.copyOf(frames);
  }

  /**
   * @param without indices of frames to leave out
   */
  static Course of(Scene scene, List<NightFrame> all, Set<Integer> without) {
    List<Integer> places =
        scene.frames().stream()
            .filter(i -> all.get(i).course().isPresent() && !without.contains(i))
            .toList();
    return new Course(scene, places, places.stream().map(all::get).toList());
  }

  /** The stretches between frames that were left out. */
  List<Course> parts(Set<Integer> without) {
    List<Course> parts = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= size(); i++) {
      boolean ends = i == size() || without.stream().anyMatch(isBetween(place(i - 1), place(i)));
      if (ends) {
        parts.add(new Course(scene, places.subList(start, i), frames.subList(start, i)));
        start = i;
      }
    }
    return parts;
  }

  private static Predicate<Integer> isBetween(int before, int after) {
    return place -> place > before && place < after;
  }

  int size() {
    return frames.size();
  }

  FrameCourse course(int index) {
    return frames.get(index).course().orElseThrow();
  }

  int place(int index) {
    return places.get(index);
  }

  /** Start of the exposure in seconds; empty where the file tells no time. */
  Optional<Double> seconds(int index) {
    return frames
        .get(index)
        .facts()
        .captureTime()
        .map(time -> time.local().toInstant(ZoneOffset.UTC).toEpochMilli() / 1000.0);
  }

  /** Whether all times are known and grow. */
  boolean isTimed() {
    for (int i = 0; i < size(); i++) {
      if (seconds(i).isEmpty() || i > 0 && seconds(i).get() <= seconds(i - 1).orElseThrow()) {
        return false;
      }
    }
    return true;
  }

  /** Hours since the first frame; for a timed course. */
  double[] hours() {
    double first = size() == 0 ? 0 : seconds(0).orElseThrow();
    return IntStream.range(0, size())
        .mapToDouble(i -> (seconds(i).orElseThrow() - first) / 3600)
        .toArray();
  }

  /** The first frame of a scene and those after a pause. */
  boolean startsBurst(int index, double pauseRatio) {
    boolean anew =
        index == 0 || !frames.get(index).sceneNumber().equals(frames.get(index - 1).sceneNumber());
    if (anew) {
      return true;
    }
    if (!isTimed()) {
      return false;
    }
    double[] starts =
        IntStream.range(0, size()).mapToDouble(i -> seconds(i).orElseThrow()).toArray();
    double[] exposures = frames.stream().mapToDouble(Course::exposureSeconds).toArray();
    return Pauses.before(starts, exposures, pauseRatio)[index];
  }

  private static double exposureSeconds(NightFrame frame) {
    return frame.facts().exposureSeconds().map(Fact::value).orElse(0.0);
  }

  /** Stretches of neighbouring frames that are marked, with at most so many others in between. */
  static List<int[]> runs(boolean[] marked, int gapMost) {
    List<int[]> runs = new ArrayList<>();
    for (int i = 0; i < marked.length; i++) {
      if (!marked[i]) {
        continue;
      }
      int[] last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
      if (last != null && i - last[1] <= gapMost + 1) {
        last[1] = i;
      } else {
        runs.add(new int[] {i, i});
      }
    }
    return runs;
  }
}
