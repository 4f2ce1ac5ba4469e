package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** Finds what happened in a night: each kind of event from the series that shows it. */
final class Events {
  private Events() {}

  /**
   * The events of all scenes, in order of their first frame. What the lens and the tripod do is
   * followed from scene to scene, what the sky does within each.
   *
   * @param tests indices of frames of focus test series: what was done on purpose is no event, and
   *     the focus before a test has nothing to do with that after it
   */
  static List<Event> of(
      List<NightFrame> frames,
      List<Gear.Divided> gears,
      Set<Integer> tests,
      EventSettings settings) {
    List<Event> events = new ArrayList<>();
    for (Gear.Divided gear : gears) {
      Course whole = Course.of(gear.whole(), frames, tests);
      if (whole.size() > 1) {
        List<Event> jumps = JumpEvents.of(whole, settings);
        List<Event> shakes = new ArrayList<>(jumps);
        shakes.addAll(new ShakeEvents(whole, settings, jumps).find());
        events.addAll(shakes);
        for (Course part : whole.parts(tests)) {
          events.addAll(FocusEvents.of(part, settings, shakes));
        }
        events.addAll(SettingEvents.of(whole));
      }
      for (Scene scene : gear.scenes()) {
        Course course = Course.of(scene, frames, tests);
        if (course.size() > 1) {
          events.addAll(CreepEvents.of(course, settings));
          events.addAll(LightEvents.of(course, settings));
        }
      }
    }
    events.replaceAll(
        event -> event.inScene(frames.get(event.firstFrame()).sceneNumber().orElseThrow()));
    events.sort(
        Comparator.comparingInt(Event::firstFrame)
            .thenComparing(Event::kind)
            .thenComparingInt(Event::lastFrame));
    return events;
  }
}
