package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rondure.intake.Fact;
import rondure.intake.ShotFacts;

/** Exposure or aperture changed between one frame and the next. */
final class SettingEvents {
  /** Two values of one setting as cameras write them differ by less, as a share. */
  private static final double SAME = 0.01;

  /** Beyond this share of all frames, changing is the way of shooting and no event. */
  private static final double BRACKETING_SHARE = 0.2;

  private SettingEvents() {}

  static List<Event> of(Course course) {
    List<Event> events = new ArrayList<>();
    events.addAll(
        changes(
            course,
            ShotFacts::exposureSeconds,
            EventKind.EXPOSURE_CHANGED,
            List.of("exposureBeforeSeconds", "exposureAfterSeconds")));
    events.addAll(
        changes(
            course,
            ShotFacts::fNumber,
            EventKind.APERTURE_CHANGED,
            List.of("fNumberBefore", "fNumberAfter")));
    return events;
  }

  private static List<Event> changes(
      Course course,
      Function<ShotFacts, Optional<Fact<Double>>> fact,
      EventKind kind,
      List<String> names) {
    List<Event> events = new ArrayList<>();
    for (int i = 1; i < course.size(); i++) {
      Optional<Double> before = value(course, fact, i - 1);
      Optional<Double> after = value(course, fact, i);
      if (before.isPresent() && after.isPresent() && differ(before.get(), after.get())) {
        Map<String, Double> sizes = Map.of(names.get(0), before.get(), names.get(1), after.get());
        events.add(
            Event.of(kind, course.scene().number(), course.place(i), course.place(i), sizes));
      }
    }
    return events.size() > Math.max(2, BRACKETING_SHARE * course.size()) ? List.of() : events;
  }

  private static Optional<Double> value(
      Course course, Function<ShotFacts, Optional<Fact<Double>>> fact, int index) {
    return fact.apply(course.frames().get(index).facts()).map(Fact::value);
  }

  private static boolean differ(double before, double after) {
    return Math.abs(after - before) > SAME * Math.max(before, after);
  }
}
