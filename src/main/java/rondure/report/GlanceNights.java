package rondure.report;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rondure.intake.CaptureTime;
import rondure.night.Event;
import rondure.night.NightSummary;

/** What the first page says of each night: how much of it is kept, and what spoiled the rest. */
final class GlanceNights {
  private static final int MOST_EVENTS = 5;
  private static final int MOST_EVENTS_OF_SEVERAL = 3;
  private static final int MOST_NIGHTS = 3;
  private static final int LONGEST_NAME = 28;

  private final ReportContext context;
  private final NightEvents events;

  private GlanceNights(ReportContext context) {
    this.context = context;
    this.events = new NightEvents(context);
  }

  /** A line for each night; for a single one only what happened, if anything did. */
  static List<String> lines(ReportContext context) {
    GlanceNights page = new GlanceNights(context);
    List<NightSummary> nights = context.book().nights();
    if (nights.size() < 2) {
      String happened = page.happened(1);
      return happened.isEmpty() ? List.of() : List.of(happened);
    }
    List<String> lines = new ArrayList<>();
    nights.stream().limit(MOST_NIGHTS).forEach(night -> lines.add(page.line(night)));
    if (nights.size() > MOST_NIGHTS) {
      String more = Integer.toString(nights.size() - MOST_NIGHTS);
      lines.add(context.words().say("glance.moreNights", "count", more));
    }
    return lines;
  }

  private String line(NightSummary night) {
    return context
        .words()
        .say(
            "glance.night",
            "name",
            name(night),
            "kept",
            Integer.toString(night.keepCount()),
            "measured",
            context.words().count("count.measured", night.measuredCount()),
            "events",
            happened(night.index()));
  }

  private String name(NightSummary night) {
    String number = Integer.toString(night.index());
    Optional<LocalDateTime> from = night.start().map(CaptureTime::local);
    Optional<LocalDateTime> to = night.end().map(CaptureTime::local);
    return from.isEmpty() || to.isEmpty()
        ? context.words().say("glance.nightUntimed", "number", number)
        : context
            .words()
            .say(
                "glance.nightTimed",
                "number",
                number,
                "date",
                Figures.date(from.get()),
                "from",
                Figures.clock(from.get()),
                "to",
                Figures.clock(to.get()));
  }

  /** The events that cost most frames, in order of time; empty when nothing happened. */
  private String happened(int night) {
    List<Event> all =
        context.book().events().stream()
            .filter(event -> !NightEvents.isOnPurpose(event))
            .filter(event -> events.frame(event.firstFrame()).nightIndex().orElse(0) == night)
            .toList();
    List<String> said =
        all.stream()
            .sorted(Comparator.comparingLong((Event event) -> -events.lost(event)))
            .limit(several() ? MOST_EVENTS_OF_SEVERAL : MOST_EVENTS)
            .sorted(Comparator.comparingInt(Event::firstFrame))
            .map(this::brief)
            .toList();
    if (said.isEmpty()) {
      return "";
    }
    String key =
        all.size() == said.size()
            ? "glance.happened"
            : several() ? "glance.happenedMoreBrief" : "glance.happenedMore";
    return context
        .words()
        .say(
            key,
            "events",
            Figures.capitalised(String.join("; ", said)),
            "more",
            Integer.toString(all.size() - said.size()));
  }

  private boolean several() {
    return context.book().nights().size() > 1;
  }

  private String brief(Event event) {
    String first = when(event.firstFrame());
    String last = when(event.lastFrame());
    return context
        .words()
        .say(
            first.equals(last) ? "glance.event" : "glance.eventFromTo",
            "kind",
            events.name(event),
            "first",
            first,
            "last",
            last);
  }

  private String when(int index) {
    return events
        .time(index)
        .map(Figures::clock)
        .orElse(Figures.shortened(events.frame(index).file(), LONGEST_NAME));
  }
}
