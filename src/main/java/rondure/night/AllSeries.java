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
    return series.stream()
        .flatMap(s -> s.points().stream())
        .map(FocusSeries.Point::frame)
        .collect(Collectors.toSet());
  }

  /** First and last place of a named series; nothing for names that fit no frame. */
  private int[] range(NamedSeries named) {
    int[] ends =
        IntStream.range(0, frames.size()).filter(i -> named.isEnd(frames.get(i))).toArray();
    return ends.length < 2 ? new int[] {0, -1} : new int[] {ends[0], ends[ends.length - 1]};
  }

  private void read(Scene scene, List<int[]> ranges) {
    List<SeriesPoint> points = SeriesPoint.of(scene, frames);
    List<List<SeriesPoint>> runs = new ArrayList<>();
    for (int[] range : ranges) {
      List<SeriesPoint> run =
          points.stream().filter(p -> p.place() >= range[0] && p.place() <= range[1]).toList();
      if (run.size() >= 3) {
        runs.add(run);
      }
    }
    boolean isNamed = !runs.isEmpty();
    if (!isNamed) {
      runs.addAll(new SeriesFinder(points, settings).find());
    }
    runs.sort(Comparator.comparingInt(run -> run.get(0).place()));
    for (int i = 0; i < runs.size(); i++) {
      add(scene, points, runs, i, isNamed);
    }
  }

  private void add(
      Scene scene, List<SeriesPoint> points, List<List<SeriesPoint>> runs, int i, boolean named) {
    List<SeriesPoint> run = runs.get(i);
    SeriesReading.Reading reading = SeriesReading.of(run, settings);
    int first = run.get(0).place();
    int last = run.get(run.size() - 1).place();
    int before = i == 0 ? -1 : runs.get(i - 1).get(runs.get(i - 1).size() - 1).place();
    int next = i + 1 < runs.size() ? runs.get(i + 1).get(0).place() : Integer.MAX_VALUE;
    OtherFrames elsewhere = new OtherFrames(run, reading);
    List<Others> others = new ArrayList<>();
    elsewhere.place(between(points, before, first), false).ifPresent(others::add);
    elsewhere.place(between(points, last, next), true).ifPresent(others::add);
    found.add(
        new FocusSeries(
            found.size() + 1,
            scene.number(),
            named,
            reading.points(run),
            reading.steps(),
            reading.ending(),
            reading.curve(),
            run.get(reading.best()).place(),
            others));
  }

  private static List<SeriesPoint> between(List<SeriesPoint> points, int after, int before) {
    return points.stream().filter(p -> p.place() > after && p.place() < before).toList();
  }
}
