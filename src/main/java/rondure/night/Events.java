package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** Finds what happened in a night: each kind of event from the series that shows it. */
final class Events {
  private Events() {}

  /**
   * The events of all scenes, in order of their first frame.
   *
   * @param tests indices of frames of focus test series: what was done on purpose is no event, and
   *     the focus before a test has nothing to do with that after it
   */
  static List<Event> of(
      List<NightFrame> frames, List<Scene> scenes, Set<Integer> tests, EventSettings settings) {
    List<Event> events = new ArrayList<>();
    for (Scene scene : scenes) {
      Course course = Course.of(scene, frames, tests);
      if (course.size() > 1) {
        List<Event> jumps = JumpEvents.of(course, settings);
        List<Event> shakes = new ArrayList<>(jumps);
        shakes.addAll(new ShakeEvents(course, settings, jumps).find());
        events.addAll(shakes);
        events.addAll(CreepEvents.of(course, settings));
        for (Course part : course.parts(tests)) {
          events.addAll(FocusEvents.of(part, settings, shakes));
        }
        events.addAll(LightEvents.of(course, settings));
        events.addAll(SettingEvents.of(course));
      }
    }
    events.sort(
        Comparator.comparingInt(Event::firstFrame)
            .thenComparing(Event::kind)
            .thenComparingInt(Event::lastFrame));
    return events;
  }
}
