package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.intake.ShotFacts;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.Scene;
import rondure.report.picture.Mark;

/** What the night's events advise, with their numbers. */
final class EventAdvice {
  /** Stars this much wider show that it is time to focus again. */
  private static final double GROWTH_PERCENT = 10;

  /** Which events tell what is behind a cause, the most telling first. */
  static final Map<Mark, List<EventKind>> BEHIND =
      Map.of(
          Mark.FOCUS,
          List.of(EventKind.FOCUS_CREEP, EventKind.FOCUS_KNOCKED),
          Mark.TRIPOD,
          List.of(
              EventKind.GUSTS,
              EventKind.HAND_ON_SHUTTER,
              EventKind.DROOP,
              EventKind.KNOCK,
              EventKind.TRACKING_ERROR),
          Mark.HAZE,
          List.of(EventKind.DEW, EventKind.CLOUD));

  private final ReportContext context;

  EventAdvice(ReportContext context) {
    this.context = context;
  }

  /** What to do against a cause, by the events behind it that softened most frames. */
  Optional<AdvicePoint> against(Mark mark) {
    return BEHIND.getOrDefault(mark, List.of()).stream()
        .filter(kind -> !of(kind).isEmpty())
        .max(
            Comparator.comparingLong((EventKind kind) -> softened(kind, mark))
                .thenComparingInt(this::frames))
        .map(this::point);
  }

  /** Of the causes that softened no frame much, what their events advise all the same. */
  List<AdvicePoint> besides(Map<Mark, Integer> tally) {
    List<AdvicePoint> besides = new ArrayList<>();
    for (Mark mark : List.of(Mark.FOCUS, Mark.TRIPOD)) {
      if (!tally.containsKey(mark)) {
        against(mark).ifPresent(besides::add);
      }
    }
    return besides;
  }

  /** Minutes in which stars grow by a tenth at the fastest creep of the night. */
  static double refocusMinutes(double growthPercentPerHour) {
    return 60 * GROWTH_PERCENT / growthPercentPerHour;
  }

  private static int roundMinutes(double minutes) {
    return (int) Math.max(1, minutes >= 20 ? 5 * Math.floor(minutes / 5) : minutes);
  }

  private List<Event> of(EventKind kind) {
    return context.book().events().stream().filter(event -> event.kind() == kind).toList();
  }

  /** Frames of its events that the cause softened. */
  private long softened(EventKind kind, Mark mark) {
    return of(kind).stream()
        .flatMapToInt(event -> IntStream.rangeClosed(event.firstFrame(), event.lastFrame()))
        .filter(i -> Mark.of(context.book().frames().get(i)) == mark)
        .distinct()
        .count();
  }

  private int frames(EventKind kind) {
    return of(kind).stream()
        .mapToInt(
            event ->
                event
                    .sizes()
                    .getOrDefault("frameCount", 1.0 + event.lastFrame() - event.firstFrame())
                    .intValue())
        .sum();
  }

  private double largest(EventKind kind, String size) {
    return of(kind).stream()
        .mapToDouble(event -> Math.abs(event.sizes().getOrDefault(size, 0.0)))
        .max()
        .orElse(0);
  }

  private AdvicePoint point(EventKind kind) {
    double minutes = refocusMinutes(Math.max(1, largest(kind, "growthPercentPerHour")));
    double driftPxPerMin = largest(kind, "driftPxPerMin");
    double seconds = usualExposure(kind);
    return AdvicePoint.of(
        context.words(),
        "advice.event." + kind,
        "times",
        context.words().count("count.time", of(kind).size()),
        "frames",
        context.words().count("count.frame", frames(kind)),
        "minutes",
        context.words().count("count.minute", roundMinutes(minutes)),
        "wider",
        Figures.fixed(1, largest(kind, "wideningRatio")),
        "jump",
        Figures.px(largest(kind, "jumpPx")),
        "drift",
        Figures.plain(1, driftPxPerMin),
        "smear",
        Figures.px(driftPxPerMin / 60 * seconds),
        "exposure",
        Figures.exposure(seconds),
        "lost",
        Figures.percent(1 - Math.pow(10, -0.4 * largest(kind, "lostMag"))));
  }

  private double usualExposure(EventKind kind) {
    int number = of(kind).get(0).sceneNumber();
    return context.book().scenes().stream()
        .filter(scene -> scene.number() == number)
        .map((Scene scene) -> SceneFigures.of(context.book(), scene))
        .flatMap(figures -> figures.usual(ShotFacts::exposureSeconds).stream())
        .findFirst()
        .orElse(0.0);
  }
}
