package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rondure.base.Orientation;
import rondure.blur.AttributionSettings;
import rondure.blur.OneFrameAttribution;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.MeasuredExposure;
import rondure.night.NightBook;
import rondure.night.NightBuilder;
import rondure.night.NightInput;
import rondure.night.NightSettings;
import rondure.night.Scene;
import rondure.sim.AimPlan;
import rondure.sim.NightEvent;
import rondure.sim.NightPlan;

/** A camera that is aimed anew begins another scene (pointing continuous). */
class ReAimedScenesTest {
  private static final int FIRST = 12;
  private static final int SECOND = 24;
  private static final int FRAMES = 40;

  private static NightBook book(boolean returns, double awayDeg) {
    NightPlan calm = EventNight.draw(23, EventNight.Theme.CALM, FRAMES).plan();
    assertEquals(FRAMES, calm.frameCount());
    AimPlan aim = calm.aim();
    AimPlan other =
        new AimPlan(
            (aim.azimuthDeg() + awayDeg) % 360,
            aim.altitudeDeg(),
            aim.rollDeg(),
            Orientation.NORMAL);
    List<NightEvent> events = new ArrayList<>(List.of(new NightEvent.ReAim(FIRST + 1, other)));
    if (returns) {
      events.add(new NightEvent.ReAim(SECOND + 1, aim));
    }
    return book(Plans.with(calm, List.of(), events));
  }

  private static NightBook book(NightPlan plan) {
    List<MeasuredExposure> exposures = new ArrayList<>();
    for (FrameMeasurement frame : TruthNight.frames(plan)) {
      String file = String.format(Locale.ROOT, "frame-%03d", exposures.size());
      exposures.add(
          new MeasuredExposure(file, List.of(), frame.facts(), new Outcome.Done<>(frame)));
    }
    return NightBuilder.build(
        new NightInput("night", exposures, Map.of(), List.of()),
        NightSettings.defaults(),
        new OneFrameAttribution(AttributionSettings.defaults()));
  }

  private static List<List<Integer>> members(NightBook book) {
    return book.scenes().stream().map(Scene::frames).toList();
  }

  private static List<Integer> range(int from, int until) {
    return IntStream.range(from, until).boxed().toList();
  }

  private static List<Event> aims(NightBook book) {
    return book.events().stream().filter(e -> e.kind() == EventKind.RE_AIM).toList();
  }

  @Test
  void anotherAimThatSharesStarsIsAnotherScene() {
    NightBook book = book(false, 8);
    assertEquals(List.of(range(0, FIRST), range(FIRST, FRAMES)), members(book));
    assertEquals(1, aims(book).size());
    assertEquals(FIRST, aims(book).get(0).firstFrame());
    assertEquals(2, aims(book).get(0).sceneNumber());
    assertEquals(2, book.frames().get(FIRST).sceneNumber().orElseThrow());
    assertEquals(List.of(1, 2), book.nights().get(0).scenes());
  }

  /** Where no star is shared the second aim is known by the pole alone. */
  @Test
  void thereAndBackAreThreeScenesWithTheAimsOfEach() {
    NightBook book = book(true, 120);
    assertEquals(
        List.of(range(0, FIRST), range(FIRST, SECOND), range(SECOND, FRAMES)), members(book));
    List<Double> declinations =
        book.scenes().stream()
            .map(scene -> scene.solution().centreDeclinationDeg().orElseThrow())
            .toList();
    assertEquals(declinations.get(0), declinations.get(2), 0.5);
    assertTrue(Math.abs(declinations.get(1) - declinations.get(0)) > 10, declinations.toString());
    assertEquals(List.of(FIRST, SECOND), aims(book).stream().map(Event::firstFrame).toList());
  }

  @Test
  void aKnockIsNoNewScene() {
    NightPlan calm = EventNight.draw(23, EventNight.Theme.CALM, FRAMES).plan();
    NightEvent knock = new NightEvent.Knock(FIRST + 1, 0, 30, 0, 1, 6, 0.5);
    NightBook book = book(Plans.with(calm, List.of(), List.of(knock)));
    assertEquals(List.of(range(0, FRAMES)), members(book));
  }
}
