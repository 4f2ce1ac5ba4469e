package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds what happened in a night: each kind of event from the series that shows it. */
final class Events {
  private Events() {}

  /** The events of all scenes, in order of their first frame. */
  static List<Event> of(List<NightFrame> frames, List<Scene> scenes, EventSettings settings) {
    List<Event> events = new ArrayList<>();
    for (Scene scene : scenes) {
      Course course = Course.of(scene, frames);
      if (course.size() > 1) {
        List<Event> jumps = JumpEvents.of(course, settings);
        List<Event> shakes = new ArrayList<>(jumps);
        shakes.addAll(new ShakeEvents(course, settings, jumps).find());
        events.addAll(shakes);
        events.addAll(CreepEvents.of(course, settings));
        events.addAll(FocusEvents.of(course, settings, shakes));
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
