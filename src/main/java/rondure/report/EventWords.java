package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import rondure.crew.FrameMeasurement;
import rondure.intake.CaptureTime;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.FrameSpan;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.layout.Wording;

/** Says what happened, when, how much, and what to do. */
final class EventWords {
  /** Frames that share no star stand at least half a diagonal apart, 0.39 of a side at 14 mm. */
  private static final double FAR_SHARE = 1.0 / 3;

  private final NightBook book;
  private final Wording words;

  EventWords(NightBook book, Wording words) {
    this.book = book;
    this.words = words;
  }

  /** One line for each event, in time order. */
  List<String> lines() {
    return book.events().stream().map(this::line).toList();
  }

  private String line(Event event) {
    List<String> values = new ArrayList<>(List.of("when", when(event) + doubt(event)));
    for (Map.Entry<String, Double> size : event.sizes().entrySet()) {
      values.add(size.getKey());
      values.add(number(size.getKey(), Math.abs(size.getValue())));
      if (size.getKey().equals("angleDeg")) {
        int eighth = (int) Math.floor(size.getValue() / 45 + 0.5) % 8;
        values.add("towards");
        values.add(words.say("towards." + eighth));
      }
    }
    return words.say("event." + event.kind() + variant(event), values.toArray(String[]::new));
  }

  private String variant(Event event) {
    return event.kind() == EventKind.RE_AIM && isFar(event) ? ".far" : weather(event);
  }

  /** Whether so much of the view changed that the size of the jump is only its least. */
  private boolean isFar(Event event) {
    double jumpPx = event.sizes().getOrDefault("jumpPx", 0.0);
    return book.frames()
        .get(event.firstFrame())
        .measurement()
        .map(FrameMeasurement::field)
        .filter(field -> jumpPx >= FAR_SHARE * Math.max(field.widthPx(), field.heightPx()))
        .isPresent();
  }

  /** Whether the focus crept while the air cooled or warmed. */
  private static String weather(Event event) {
    double growth = event.sizes().getOrDefault("growthPercentPerDegree", 0.0);
    return growth == 0 ? "" : growth < 0 ? ".cooling" : ".warming";
  }

  /** One frame's name and time, or the first's and the last's. */
  private String when(Event event) {
    String first = frame(event.firstFrame());
    return event.firstFrame() == event.lastFrame()
        ? first
        : words.say("event.fromTo", "first", first, "last", frame(event.lastFrame()));
  }

  /** Between which frames it began or ended, where that is more than a frame's doubt. */
  private String doubt(Event event) {
    List<String> open = new ArrayList<>();
    if (event.start().isWide()) {
      open.add(between("event.startBetween", event.start()));
    }
    if (event.end().isWide()) {
      open.add(between("event.endBetween", event.end()));
    }
    return open.isEmpty() ? "" : " (" + String.join("; ", open) + ")";
  }

  private String between(String key, FrameSpan span) {
    String earliest = book.frames().get(span.earliest()).file();
    return words.say(key, "earliest", earliest, "latest", book.frames().get(span.latest()).file());
  }

  private String frame(int index) {
    NightFrame frame = book.frames().get(index);
    return frame
        .facts()
        .captureTime()
        .map(CaptureTime::local)
        .map(
            time ->
                words.say("event.frame", "file", frame.file(), "time", Figures.clockSeconds(time)))
        .orElse(frame.file());
  }

  private static String number(String name, double value) {
    if (name.endsWith("Seconds")) {
      return Figures.exposure(value);
    }
    if (name.endsWith("Mag") || name.startsWith("fNumber")) {
      return Figures.plain(1, value);
    }
    return name.contains("Percent") || name.endsWith("Count") || name.endsWith("Deg")
        ? Figures.fixed(0, value)
        : Figures.plain(name.endsWith("Ratio") ? 2 : 1, value);
  }
}
