package rondure.report.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/**
 * The geometry of the night's course: names that never touch, round values, signs that stay apart.
 */
class CourseChartTest {
  private static final double WIDTH = 652;
  private static final double LANE = 17;
  private static final List<String> NAMES =
      List.of("wind", "camera knocked", "hand on the shutter", "exposure 80 s", "cloud", "dew");

  private static double millis(int hour, int minute) {
    return LocalDateTime.of(2031, 8, 14, hour, minute).toInstant(ZoneOffset.UTC).toEpochMilli();
  }

  private static CourseAxis night() {
    return new CourseAxis(CourseAxis.Kind.TIME, millis(1, 0), millis(5, 0), "clock");
  }

  private static CourseChart chart(List<CourseChart.Event> events, int lanes) {
    return new CourseChart(List.of(), night(), events, List.of(), lanes);
  }

  private static Rectangle2D box(EventLanes.Place place) {
    return new Rectangle2D.Double(
        place.from(), place.lane() * LANE, place.to() - place.from(), LANE);
  }

  @Property(tries = 300)
  void noNameTouchesAnotherAndNoneIsLost(@ForAll @IntRange(max = 60) int count, @ForAll long seed) {
    Random random = new Random(seed);
    List<CourseChart.Event> events = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double from = millis(1, 0) + random.nextDouble() * 4 * 3_600_000;
      double to = Math.min(millis(5, 0), from + Math.pow(random.nextDouble(), 4) * 4 * 3_600_000);
      events.add(new CourseChart.Event(NAMES.get(random.nextInt(NAMES.size())), from, to));
    }
    CourseChart chart = chart(events, 6);
    List<EventLanes.Place> places = chart.places(WIDTH);
    for (int i = 0; i < places.size(); i++) {
      assertTrue(places.get(i).lane() < 6);
      assertTrue(places.get(i).wordsFrom() >= 0 && places.get(i).wordsTo() <= WIDTH);
      for (int j = 0; j < i; j++) {
        assertFalse(
            box(places.get(i)).intersects(box(places.get(j))),
            places.get(i) + " touches " + places.get(j));
      }
    }
    int named = places.stream().mapToInt(place -> place.named().bars().size()).sum();
    assertEquals(count, named + chart.unnamed(WIDTH));
  }

  @Test
  void anEventIsNamedUnderItsTime() {
    CourseChart.Event wind = new CourseChart.Event("wind", millis(2, 0), millis(3, 0));
    EventLanes.Place place = chart(List.of(wind), 6).places(WIDTH).get(0);
    double plot = WIDTH - CourseChart.GUTTER - CourseChart.RIGHT;
    assertEquals("wind", place.named().words());
    assertEquals(night().x(millis(2, 0), plot), place.wordsFrom(), 1e-9);
    assertEquals(night().x(millis(3, 0), plot), place.named().to(), 1e-9);
  }

  /** Two gusts in one minute share a name; one an hour later has its own. */
  @Test
  void eventsOfOneKindCloseTogetherShareTheirName() {
    List<CourseChart.Event> gusts = new ArrayList<>();
    for (double at : new double[] {millis(2, 0), millis(2, 1), millis(3, 0)}) {
      gusts.add(new CourseChart.Event("wind", at, at));
    }
    List<EventLanes.Place> places = chart(gusts, 6).places(WIDTH);
    assertEquals(2, places.size());
    assertEquals(2, places.get(0).named().bars().size());
  }

  @Test
  void theWeightiestEventsAreNamedWhereRoomIsShort() {
    List<CourseChart.Event> events = new ArrayList<>();
    NAMES.forEach(name -> events.add(new CourseChart.Event(name, millis(2, 0), millis(2, 1))));
    CourseChart chart = chart(events, 2);
    List<String> named = chart.places(WIDTH).stream().map(p -> p.named().words()).toList();
    assertEquals(NAMES.subList(0, 2), named);
    assertEquals(4, chart.unnamed(WIDTH));
  }

  /** Four hours in 600 px, words 58 px apart: half hours are the least round step. */
  @Test
  void timesStandAtRoundHalfHours() {
    List<NiceTicks.Tick> ticks = night().ticks(600);
    List<String> words = ticks.stream().map(NiceTicks.Tick::words).toList();
    assertEquals(List.of("01:00", "01:30", "02:00"), words.subList(0, 3));
    assertEquals(9, ticks.size());
  }

  @Property
  void valuesAtAnAxisAreRoundAndFew(
      @ForAll @IntRange(min = 0, max = 5000) int low,
      @ForAll @IntRange(min = 1, max = 5000) int by) {
    List<NiceTicks.Tick> ticks = NiceTicks.of(low / 10.0, (low + by) / 10.0, 5);
    assertTrue(ticks.size() <= 6, ticks.toString());
    for (NiceTicks.Tick tick : ticks) {
      assertEquals(tick.value(), Double.parseDouble(tick.words()), 1e-9);
      assertTrue(tick.value() >= low / 10.0 - 1e-6 && tick.value() <= (low + by) / 10.0 + 1e-6);
    }
  }

  /** 2,000 frames in 600 px: no two signs of one kind next to each other overlap. */
  @Test
  void signsOfManyFramesAreThinnedUntilTheyStandApart() {
    List<PanelDrawing.Spot> spots = new ArrayList<>();
    for (int i = 0; i < 2000; i++) {
      spots.add(new PanelDrawing.Spot(0.3 * i, 50, i % 100 < 50 ? Mark.NONE : Mark.TRIPOD));
    }
    List<PanelDrawing.Spot> signs = PanelDrawing.thinned(spots, 4.4);
    for (Mark mark : List.of(Mark.NONE, Mark.TRIPOD)) {
      List<PanelDrawing.Spot> own = signs.stream().filter(s -> s.mark() == mark).toList();
      assertTrue(own.size() > 40 && own.size() < 100, mark + ": " + own.size());
      for (int i = 1; i < own.size(); i++) {
        assertTrue(own.get(i).to(own.get(i - 1)) >= 4.4);
      }
    }
  }
}
