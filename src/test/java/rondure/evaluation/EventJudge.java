package rondure.evaluation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.blur.AttributionSettings;
import rondure.blur.SceneAttribution;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.FrameSpan;
import rondure.night.MeasuredExposure;
import rondure.night.NightBook;
import rondure.night.NightBuilder;
import rondure.night.NightInput;
import rondure.night.NightSettings;

/** Holds the events that are told against those that were scheduled. */
final class EventJudge {
  private static final Map<EventKind, String> SIZES =
      Map.of(
          EventKind.KNOCK, "jumpPx",
          EventKind.GUSTS, "wideningRatio",
          EventKind.HAND_ON_SHUTTER, "wideningRatio",
          EventKind.DROOP, "driftPxPerMin",
          EventKind.TRACKING_ERROR, "driftPxPerMin",
          EventKind.FOCUS_CREEP, "growthPercentPerHour",
          EventKind.FOCUS_KNOCKED, "widthRatio",
          EventKind.DEW, "lostMag",
          EventKind.CLOUD, "lostMag",
          EventKind.SKY_BRIGHTER, "brighterMag");

  private final Map<EventKind, Tally> tallies = new EnumMap<>(EventKind.class);
  private final List<String> faults = new ArrayList<>();
  private int quietFrames;
  private int falseInQuiet;
  private int extra;
  private int falseSeries;

  /** One kind's count. */
  static final class Tally {
    int scheduled;
    int found;
    int first;
    int last;

    /** Within one frame of the first and last frames that the event says it may have. */
    int firstStated;

    int lastStated;
    final List<Double> startSpans = new ArrayList<>();
    final List<Double> firstOff = new ArrayList<>();
    final List<Double> sizeRatios = new ArrayList<>();

    double foundShare() {
      return (double) found / scheduled;
    }
  }

  static NightBook book(EventNight night) {
    List<MeasuredExposure> exposures = new ArrayList<>();
    for (FrameMeasurement frame : TruthNight.frames(night.plan())) {
      String file = String.format(Locale.ROOT, "frame-%03d", exposures.size());
      exposures.add(
          new MeasuredExposure(file, List.of(), frame.facts(), new Outcome.Done<>(frame)));
    }
    return NightBuilder.build(
        new NightInput("night", exposures, Map.of(), List.of()),
        NightSettings.defaults(),
        new SceneAttribution(AttributionSettings.defaults()));
  }

  void add(EventNight night) {
    NightBook book = book(night);
    falseSeries += book.focusSeries().size();
    add(night, book.events());
  }

  void add(EventNight night, List<Event> events) {
    List<Event> told = new ArrayList<>(events);
    boolean[] busy = new boolean[night.plan().frameCount()];
    for (EventNight.Scheduled one : night.scheduled()) {
      for (int i = Math.max(0, one.first() - 1);
          i <= Math.min(busy.length - 1, one.last() + 1);
          i++) {
        busy[i] = true;
      }
      judge(night, one, told);
    }
    for (Event other : told) {
      boolean quiet = !busy[other.firstFrame()];
      falseInQuiet += quiet ? 1 : 0;
      extra += quiet ? 0 : 1;
      faults.add((quiet ? "FALSE " : "EXTRA ") + line(night) + " told " + line(other));
    }
    for (boolean b : busy) {
      quietFrames += b ? 0 : 1;
    }
  }

  private void judge(EventNight night, EventNight.Scheduled one, List<Event> told) {
    Tally tally = tallies.computeIfAbsent(one.kind(), kind -> new Tally());
    tally.scheduled++;
    Optional<Event> match =
        told.stream()
            .filter(e -> e.kind() == one.kind())
            .filter(e -> e.firstFrame() <= one.last() + 1 && e.lastFrame() >= one.first() - 1)
            .findFirst();
    if (match.isEmpty()) {
      faults.add("MISSED " + line(night) + " " + one);
      return;
    }
    Event event = match.get();
    told.remove(event);
    tally.found++;
    boolean first = Math.abs(event.firstFrame() - one.first()) <= 1;
    boolean last = Math.abs(event.lastFrame() - one.last()) <= 1;
    tally.first += first ? 1 : 0;
    tally.last += last ? 1 : 0;
    tally.firstStated += isWithin(one.first(), event.start()) ? 1 : 0;
    tally.lastStated += isWithin(one.last(), event.end()) ? 1 : 0;
    tally.startSpans.add((double) event.start().latest() - event.start().earliest());
    tally.firstOff.add((double) Math.abs(event.firstFrame() - one.first()));
    if (SIZES.containsKey(one.kind())) {
      tally.sizeRatios.add(event.sizes().get(SIZES.get(one.kind())) / one.size());
    }
    if (!first || !last) {
      faults.add("TIMES " + line(night) + " " + one + " told " + line(event));
    }
  }

  private static boolean isWithin(int frame, FrameSpan span) {
    return frame >= span.earliest() - 1 && frame <= span.latest() + 1;
  }

  Map<EventKind, Tally> tallies() {
    return tallies;
  }

  List<String> faults() {
    return faults;
  }

  double falsePer500() {
    return 500.0 * falseInQuiet / Math.max(1, quietFrames);
  }

  /** Focus test series that were told of, though none was made. */
  int falseSeries() {
    return falseSeries;
  }

  String table() {
    StringBuilder text = new StringBuilder();
    tallies.forEach(
        (kind, t) ->
            text.append(
                String.format(
                    Locale.ROOT,
                    "%-16s found %3d of %3d (%5.1f %%), first %3d, last %3d, within stated %3d, %3d (frames"
                        + " open %s); first off %s; size %s%n",
                    kind,
                    t.found,
                    t.scheduled,
                    100 * t.foundShare(),
                    t.first,
                    t.last,
                    t.firstStated,
                    t.lastStated,
                    spread(t.startSpans),
                    spread(t.firstOff),
                    spread(t.sizeRatios))));
    text.append(
        String.format(
            Locale.ROOT,
            "%d false events in %d quiet frames: %.2f in 500; %d extra beside scheduled ones;"
                + " %d false focus tests%n",
            falseInQuiet,
            quietFrames,
            falsePer500(),
            extra,
            falseSeries));
    return text.toString();
  }

  private static String spread(List<Double> values) {
    double[] all = values.stream().mapToDouble(v -> v).toArray();
    return String.format(
        Locale.ROOT,
        "%.2f (%.2f to %.2f)",
        RobustStats.median(all),
        RobustStats.percentile(0.05, all),
        RobustStats.percentile(0.95, all));
  }

  private static String line(EventNight night) {
    return night.plan().title()
        + " ("
        + night.plan().frameCount()
        + " x "
        + night.plan().shots().get(0).exposureSeconds()
        + "/"
        + night.plan().shots().get(0).intervalSeconds()
        + " s, "
        + night.plan().lens().focalLengthMm()
        + " mm)";
  }

  private static String line(Event event) {
    return event.kind()
        + " "
        + event.firstFrame()
        + "-"
        + event.lastFrame()
        + " "
        + event.start()
        + event.end()
        + event.sizes();
  }

  /** Nights of each theme by command: seed of the first, count, most frames, themes. */
  public static void main(String[] arguments) {
    long seed = Long.parseLong(arguments[0]);
    int count = Integer.parseInt(arguments[1]);
    int most = Integer.parseInt(arguments[2]);
    for (int k = 3; k < arguments.length; k++) {
      EventJudge judge = new EventJudge();
      EventNight.Theme theme = EventNight.Theme.valueOf(arguments[k]);
      long start = System.nanoTime();
      for (int n = 0; n < count; n++) {
        judge.add(EventNight.draw(seed + n, theme, most));
      }
      System.out.println("== " + theme + " " + (System.nanoTime() - start) / 1_000_000_000 + " s");
      System.out.print(judge.table());
      judge.faults().forEach(System.out::println);
    }
  }
}
