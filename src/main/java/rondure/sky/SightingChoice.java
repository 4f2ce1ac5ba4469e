package rondure.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Chooses some frames and tracks of a scene, so that a long night costs no more than a short. */
final class SightingChoice {
  private static final int LEAST_PER_FRAME = 4;

  /** With so many common stars a frame, a wider choice of frames is taken. */
  private static final int AMPLE_PER_FRAME = 20;

  /** Cells along the longer and the shorter side. */
  private static final int LONG_CELLS = 6;

  private static final int SHORT_CELLS = 4;

  private final TreeMap<Integer, List<Sighting>> byFrame = new TreeMap<>();
  private final List<Integer> numbers;
  private final Camera camera;

  /**
   * @param camera that saw them: its centre is the middle of the sensor
   */
  SightingChoice(Collection<Sighting> sightings, Camera camera) {
    this.camera = camera;
    sightings.forEach(s -> byFrame.computeIfAbsent(s.frame(), f -> new ArrayList<>()).add(s));
    byFrame.values().removeIf(list -> list.size() < LEAST_PER_FRAME);
    numbers = List.copyOf(byFrame.keySet());
  }

  /**
   * Frames as far apart as common stars allow, and of their tracks, spread over the sensor, those
   * with most sightings first.
   */
  SightingTable of(int mostFrames, int mostTracks) {
    double stride = Math.max(1, (numbers.size() - 1) / (double) (mostFrames - 1));
    SightingTable table = at(stride, mostFrames, mostTracks);
    while (stride > 1 && table.count() < AMPLE_PER_FRAME * table.frames()) {
      stride = Math.max(1, stride / 2);
      SightingTable nearer = at(stride, mostFrames, mostTracks);
      table = nearer.count() > table.count() ? nearer : table;
    }
    return table;
  }

  /** Frames at a stride about the middle of the scene. */
  private SightingTable at(double stride, int mostFrames, int mostTracks) {
    int count = Math.min(numbers.size(), mostFrames);
    double first = (numbers.size() - 1) / 2.0 - stride * (count - 1) / 2.0;
    int[] chosen = new int[count];
    for (int i = 0; i < count; i++) {
      int place = (int) Math.round(first + i * stride);
      chosen[i] = numbers.get(Math.max(0, Math.min(numbers.size() - 1, place)));
    }
    int[] distinct = Arrays.stream(chosen).distinct().toArray();
    TreeMap<Integer, List<Sighting>> tracks = new TreeMap<>();
    for (int f : distinct) {
      byFrame.get(f).forEach(s -> tracks.computeIfAbsent(s.track(), t -> new ArrayList<>()).add(s));
    }
    tracks.values().removeIf(list -> list.size() < 2);
    return new SightingTable(distinct, spread(List.copyOf(tracks.values()), mostTracks));
  }

  /**
   * Takes tracks from the cells of a coarse grid in turn; a frame that is turned takes the same.
   */
  private List<List<Sighting>> spread(List<List<Sighting>> tracks, int most) {
    if (tracks.size() <= most) {
      return tracks;
    }
    double width = 2 * camera.centreXPx() + 1;
    double height = 2 * camera.centreYPx() + 1;
    int columns = width >= height ? LONG_CELLS : SHORT_CELLS;
    int rows = LONG_CELLS + SHORT_CELLS - columns;
    Map<Integer, Integer> taken = new HashMap<>();
    Map<List<Sighting>, Integer> turns = new IdentityHashMap<>();
    List<List<Sighting>> longest = new ArrayList<>(tracks);
    longest.sort(Comparator.comparingInt((List<Sighting> t) -> -t.size()));
    for (List<Sighting> track : longest) {
      Sighting middle = track.get(track.size() / 2);
      int column = cell((middle.xPx() + 0.5) / width, columns);
      int row = cell((middle.yPx() + 0.5) / height, rows);
      turns.put(track, taken.merge(row * columns + column, 1, Integer::sum));
    }
    longest.sort(Comparator.comparingInt(turns::get));
    return List.copyOf(longest.subList(0, most));
  }

  private static int cell(double share, int cells) {
    return (int) Math.max(0, Math.min(cells - 1, share * cells));
  }
}
