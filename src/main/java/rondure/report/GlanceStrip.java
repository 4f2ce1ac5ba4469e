package rondure.report;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.intake.CaptureTime;
import rondure.night.Event;
import rondure.night.NightFrame;
import rondure.report.picture.Mark;
import rondure.report.picture.NightStrip;

/** Makes the strip of the whole night: a sign for each frame, events named where there is room. */
record GlanceStrip(ReportContext context) {
  private static final int MOST_RUNS = 3;

  /** Times of shorter nights have seconds. */
  private static final long BRIEF_MINUTES = 10;

  /**
   * @param mostPx height that it may take at most, CSS pixels
   */
  PictureView view(double mostPx) {
    NightStrip strip = new NightStrip(runs());
    context.pictures().add("night-strip", strip);
    int width = context.pictureWidthPx();
    String frames = context.words().count("count.frame", context.book().frames().size());
    String alt =
        context
            .words()
            .say("alt.strip", "frames", frames, "kept", Integer.toString(context.kept()));
    long height = Math.round(Math.ceil(strip.heightFor(width, mostPx)));
    return new PictureView("night-strip", alt, width, height);
  }

  /**
   * The frames as they come; the first frame of another night starts a new run. Of many nights it
   * is parted by a line only.
   */
  private List<NightStrip.Run> runs() {
    List<NightFrame> frames = context.book().frames();
    List<NightStrip.Run> runs = new ArrayList<>();
    Optional<Integer> night = Optional.empty();
    int start = 0;
    for (int i = 0; i < frames.size(); i++) {
      Optional<Integer> its = frames.get(i).nightIndex();
      if (its.isPresent() && night.isPresent() && !its.equals(night)) {
        runs.add(run(start, i));
        start = i;
      }
      night = its.isPresent() ? its : night;
    }
    runs.add(run(start, frames.size()));
    return runs.size() > MOST_RUNS ? List.of(run(0, frames.size())) : runs;
  }

  private NightStrip.Run run(int from, int to) {
    List<NightFrame> frames = context.book().frames().subList(from, to);
    boolean[] breaks = LongPause.before(frames);
    boolean isBrief = isBrief(frames);
    List<NightStrip.Item> items = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      items.add(item(frames.get(i), breaks[i], isBrief));
    }
    return new NightStrip.Run(items, spans(from, to));
  }

  private static boolean isBrief(List<NightFrame> frames) {
    List<LocalDateTime> times =
        frames.stream()
            .flatMap(frame -> frame.facts().captureTime().stream())
            .map(CaptureTime::local)
            .sorted()
            .toList();
    return !times.isEmpty()
        && Duration.between(times.get(0), times.get(times.size() - 1)).toMinutes() < BRIEF_MINUTES;
  }

  private List<NightStrip.Span> spans(int from, int to) {
    NightEvents events = new NightEvents(context);
    List<NightStrip.Span> spans = new ArrayList<>();
    context.book().focusSeries().stream()
        .map(series -> series.points())
        .map(points -> new int[] {points.get(0).frame(), points.get(points.size() - 1).frame()})
        .filter(ends -> ends[0] >= from && ends[0] < to)
        .map(ends -> new NightStrip.Span(ends[0] - from, Math.min(to - 1, ends[1]) - from, test()))
        .forEach(spans::add);
    events.costliestFirst().stream()
        .filter(event -> event.firstFrame() >= from && event.firstFrame() < to)
        .map(event -> span(event, events.name(event), from, to))
        .forEach(spans::add);
    return spans;
  }

  private String test() {
    return context.words().say("glance.event.focusTest");
  }

  private static NightStrip.Span span(Event event, String name, int from, int to) {
    return new NightStrip.Span(
        event.firstFrame() - from, Math.min(to - 1, event.lastFrame()) - from, name);
  }

  private static NightStrip.Item item(NightFrame frame, boolean isBreak, boolean isBrief) {
    String time = frame.facts().captureTime().map(taken -> Figures.clock(taken.local())).orElse("");
    return new NightStrip.Item(Mark.of(frame), Ranking.isKeep(frame), time, isBreak);
  }
}
