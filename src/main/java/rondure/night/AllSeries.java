package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import rondure.night.FocusSeries.Others;

/** All focus test series of a night: those that the user named, else those that are recognised. */
final class AllSeries {
  /** Fewest frames of a series that the user named. */
  private static final int LEAST_NAMED = 3;

  private final List<NightFrame> frames;
  private final SeriesSettings settings = SeriesSettings.defaults();
  private final List<FocusSeries> found = new ArrayList<>();

  private AllSeries(List<NightFrame> frames) {
    this.frames = frames;
  }

  /** In order of their first frame. */
  static List<FocusSeries> of(
      List<NightFrame> frames, List<Scene> scenes, List<NamedSeries> named) {
    AllSeries all = new AllSeries(frames);
    List<int[]> ranges = named.stream().map(all::range).toList();
    scenes.forEach(scene -> all.read(scene, ranges));
    return List.copyOf(all.found);
  }

  /** Indices of all frames that are part of a series. */
  static Set<Integer> members(List<FocusSeries> series) {
    return series.stream().flatMap(s -> s.members().stream()).collect(Collectors.toSet());
  }

  /** First and last place of a named series; nothing for names that fit no frame. */
  private int[] range(NamedSeries named) {
    int[] ends =
        IntStream.range(0, frames.size()).filter(i -> named.isEnd(frames.get(i))).toArray();
    return ends.length < 2 ? new int[] {0, -1} : new int[] {ends[0], ends[ends.length - 1]};
  }

  private void read(Scene scene, List<int[]> ranges) {
    List<SeriesPoint> points = SeriesPoint.of(scene, frames);
    List<SeriesRun> runs = new ArrayList<>();
    for (int[] range : ranges) {
      List<SeriesPoint> run =
          points.stream().filter(p -> p.place() >= range[0] && p.place() <= range[1]).toList();
      if (run.size() >= LEAST_NAMED) {
        runs.add(SeriesRun.named(run, settings));
      }
    }
    boolean isNamed = !runs.isEmpty();
    if (!isNamed) {
      runs.addAll(new SeriesFinder(points, settings).find());
    }
    runs.sort(Comparator.comparingInt(SeriesRun::firstPlace));
    for (int i = 0; i < runs.size(); i++) {
      add(scene, points, runs, i, isNamed);
    }
  }

  private void add(
      Scene scene, List<SeriesPoint> points, List<SeriesRun> runs, int i, boolean named) {
    SeriesRun run = runs.get(i);
    SeriesReading.Reading reading = SeriesReading.of(run.curve(), settings);
    int before = i == 0 ? -1 : runs.get(i - 1).lastPlace();
    int next = i + 1 < runs.size() ? runs.get(i + 1).firstPlace() : Integer.MAX_VALUE;
    OtherFrames elsewhere = new OtherFrames(run.curve(), reading);
    List<Others> others = new ArrayList<>();
    elsewhere.place(between(points, before, run.firstPlace()), false).ifPresent(others::add);
    elsewhere.place(between(points, run.lastPlace(), next), true).ifPresent(others::add);
    found.add(
        new FocusSeries(
            found.size() + 1,
            scene.number(),
            named,
            reading.points(run.curve()),
            run.onTheWay().stream().map(SeriesPoint::place).toList(),
            reading.steps(),
            reading.ending(),
            reading.curve(),
            run.curve().get(reading.best()).place(),
            others));
  }

  private static List<SeriesPoint> between(List<SeriesPoint> points, int after, int before) {
    return points.stream().filter(p -> p.place() > after && p.place() < before).toList();
  }
}
