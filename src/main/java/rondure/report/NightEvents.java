package rondure.report;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import rondure.intake.CaptureTime;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.NightFrame;

/** The events of a night as the first two pages name them: in a few words, the costliest first. */
record NightEvents(ReportContext context) {
  /** What was done on purpose spoils nothing. */
  private static final Set<EventKind> ON_PURPOSE =
      EnumSet.of(EventKind.RE_AIM, EventKind.EXPOSURE_CHANGED, EventKind.APERTURE_CHANGED);

  /** Those that cost most frames first; of as many the first. */
  List<Event> costliestFirst() {
    return context.book().events().stream()
        .sorted(
            Comparator.comparing(NightEvents::isOnPurpose)
                .thenComparing(Comparator.comparingLong(this::lost).reversed())
                .thenComparingInt(Event::firstFrame))
        .toList();
  }

  static boolean isOnPurpose(Event event) {
    return ON_PURPOSE.contains(event.kind());
  }

  /** Frames of the event that are not kept. */
  long lost(Event event) {
    return IntStream.rangeClosed(event.firstFrame(), event.lastFrame())
        .mapToObj(this::frame)
        .filter(frame -> frame.sceneNumber().isPresent() && !Ranking.isKeep(frame))
        .count();
  }

  /** "wind", "camera knocked", "exposure now 80 s". */
  String name(Event event) {
    return context
        .words()
        .say(
            "glance.event." + event.kind(),
            "exposure",
            Figures.exposure(event.sizes().getOrDefault("exposureAfterSeconds", 0.0)),
            "fNumber",
            Figures.plain(1, event.sizes().getOrDefault("fNumberAfter", 0.0)));
  }

  NightFrame frame(int index) {
    return context.book().frames().get(index);
  }

  Optional<LocalDateTime> time(int index) {
    return frame(index).facts().captureTime().map(CaptureTime::local);
  }
}
