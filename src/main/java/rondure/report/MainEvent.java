package rondure.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.NightFrame;
import rondure.report.picture.Mark;

/**
 * Names what spoiled most frames: the event behind the cause and its time, where one explains it.
 */
final class MainEvent {
  private final ReportContext context;
  private final NightEvents events;
  private final Mark cause;
  private final List<Integer> lost;

  private MainEvent(ReportContext context, Mark cause) {
    this.context = context;
    this.events = new NightEvents(context);
    this.cause = cause;
    this.lost =
        IntStream.range(0, context.book().frames().size())
            .filter(i -> isLost(events.frame(i)) && Mark.of(events.frame(i)) == cause)
            .boxed()
            .toList();
  }

  /**
   * "wind between 01:10 and 01:25": the event that covers at least half of the frames lost to a
   * cause, else its events of one kind together, else the cause, with its time where all of them
   * stand in one stretch.
   */
  static String words(ReportContext context, Mark cause) {
    MainEvent main = new MainEvent(context, cause);
    List<EventKind> kinds = EventAdvice.BEHIND.getOrDefault(cause, List.of());
    Optional<String> event =
        context.book().events().stream()
            .filter(e -> kinds.contains(e.kind()) && main.explains(List.of(e)))
            .max((one, two) -> Long.compare(main.covered(List.of(one)), main.covered(List.of(two))))
            .map(e -> main.timed("glance.main." + e.kind(), e.firstFrame(), main.end(e)));
    return event.or(() -> main.often(kinds)).orElseGet(main::causeItself);
  }

  static boolean isLost(NightFrame frame) {
    return Ranking.isMeasured(frame)
        && frame.verdict().isPresent()
        && !frame.isFocusTest()
        && !Ranking.isKeep(frame);
  }

  private boolean explains(List<Event> some) {
    return 2 * covered(some) >= lost.size();
  }

  private long covered(List<Event> some) {
    return lost.stream()
        .filter(i -> some.stream().anyMatch(e -> i >= e.firstFrame() && i <= reach(e)))
        .count();
  }

  /** Focus that was knocked stays so until something else happens to it. */
  private int reach(Event event) {
    if (event.kind() != EventKind.FOCUS_KNOCKED) {
      return event.lastFrame();
    }
    int next =
        context.book().events().stream()
            .filter(e -> EventAdvice.BEHIND.get(Mark.FOCUS).contains(e.kind()))
            .mapToInt(e -> e.firstFrame() - 1)
            .filter(end -> end >= event.lastFrame())
            .min()
            .orElse(context.book().frames().size() - 1);
    Optional<Integer> night = events.frame(event.firstFrame()).nightIndex();
    return IntStream.rangeClosed(event.lastFrame(), next)
        .filter(i -> events.frame(i).nightIndex().equals(night))
        .max()
        .orElse(event.lastFrame());
  }

  /** A knock has a moment, whatever follows from it. */
  private int end(Event event) {
    return event.kind() == EventKind.FOCUS_KNOCKED ? event.firstFrame() : event.lastFrame();
  }

  private Optional<String> often(List<EventKind> kinds) {
    for (EventKind kind : kinds) {
      List<Event> all =
          context.book().events().stream().filter(event -> event.kind() == kind).toList();
      if (!all.isEmpty() && explains(all)) {
        String times = context.words().count("count.time", all.size());
        String name = context.words().say("glance.main." + kind);
        return Optional.of(context.words().say("glance.main.often", "what", name, "times", times));
      }
    }
    return Optional.empty();
  }

  private String causeItself() {
    String key = "glance.what." + cause;
    int first = lost.get(0);
    int last = lost.get(lost.size() - 1);
    boolean isOneStretch =
        IntStream.rangeClosed(first, last)
            .mapToObj(events::frame)
            .filter(MainEvent::isLost)
            .allMatch(frame -> Mark.of(frame) == cause);
    boolean isPart =
        IntStream.range(0, first).mapToObj(events::frame).anyMatch(Ranking::isMeasured)
            || IntStream.range(last + 1, context.book().frames().size())
                .mapToObj(events::frame)
                .anyMatch(Ranking::isMeasured);
    return isOneStretch && isPart ? timed(key, first, last) : context.words().say(key);
  }

  private String timed(String key, int first, int last) {
    String what = context.words().say(key);
    if (events.time(first).isEmpty() || events.time(last).isEmpty()) {
      return what;
    }
    String from = Figures.clock(events.time(first).get());
    String to = Figures.clock(events.time(last).get());
    boolean isMoment = from.equals(to);
    boolean manyNights = context.book().nights().size() > 1;
    String when =
        context
            .words()
            .say(
                isMoment ? "glance.main.at" : "glance.main.between",
                "what",
                what,
                "first",
                from,
                "last",
                to);
    return manyNights
        ? context
            .words()
            .say(
                "glance.main.onDate",
                "when",
                when,
                "date",
                Figures.dayAndMonth(events.time(first).get()))
        : when;
  }
}
