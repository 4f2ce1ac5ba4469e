package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Exposure and aperture that change between one frame and the next. */
class SettingEventsTest {
  private static final int FRAMES = 12;

  private static List<Event> events(boolean timed, Consumer<Exposures> fromTheSeventhOn) {
    return events(timed, i -> i >= 6, fromTheSeventhOn);
  }

  private static List<Event> events(
      boolean timed, java.util.function.IntPredicate changed, Consumer<Exposures> change) {
    List<MeasuredExposure> exposures = new ArrayList<>();
    for (int i = 0; i < FRAMES; i++) {
      Exposures made = Exposures.at("f" + i + ".tif", Exposures.EVENING.plusSeconds(15L * i));
      made.time = timed ? made.time : Optional.empty();
      if (changed.test(i)) {
        change.accept(made);
      }
      exposures.add(made.make());
    }
    // The drawn sky does not follow the settings, so that it seems brighter: not looked at here.
    return Exposures.book(exposures).events().stream()
        .filter(event -> event.kind() != EventKind.SKY_BRIGHTER)
        .toList();
  }

  private static Map<EventKind, Integer> kinds(List<Event> events) {
    return events.stream()
        .collect(java.util.stream.Collectors.toMap(Event::kind, Event::firstFrame));
  }

  @Test
  void aChangedApertureIsAnEventOfItsOwn() {
    List<Event> events = events(true, made -> made.fNumber = Optional.of(4.0));
    assertEquals(Map.of(EventKind.APERTURE_CHANGED, 6), kinds(events));
    assertEquals(Map.of("fNumberBefore", 2.8, "fNumberAfter", 4.0), events.get(0).sizes());
    assertEquals(6, events.get(0).lastFrame());
  }

  @Test
  void bothMayChangeAtOnce() {
    List<Event> events =
        events(
            true,
            made -> {
              made.fNumber = Optional.of(4.0);
              made.exposure = Optional.of(5.0);
            });
    assertEquals(
        Map.of(EventKind.APERTURE_CHANGED, 6, EventKind.EXPOSURE_CHANGED, 6), kinds(events));
  }

  /** Frames without a time stand in the order of their names. */
  @Test
  void framesWithoutATimeTellItToo() {
    List<Event> events = events(false, made -> made.fNumber = Optional.of(4.0));
    assertEquals(Map.of(EventKind.APERTURE_CHANGED, 6), kinds(events));
  }

  /** Cameras write 1/3 s and 0.333 s, f/2.8 and 2.828. */
  @Test
  void otherDigitsOfOneSettingAreNoChange() {
    assertEquals(List.of(), events(true, made -> made.exposure = Optional.of(10.05)));
  }

  @Test
  void bracketsAreAWayOfShooting() {
    assertEquals(
        List.of(), events(true, i -> i % 2 == 1, made -> made.exposure = Optional.of(5.0)));
  }

  @Test
  void anUnknownApertureIsNoChange() {
    assertEquals(List.of(), events(true, made -> made.fNumber = Optional.empty()));
  }
}
