package rondure.night;

import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Something that happened in the night.
 *
 * @param kind what
 * @param sceneNumber the scene of its first frame
 * @param firstFrame index into NightBook.frames of the first frame that shows it
 * @param lastFrame the last one
 * @param sizes how much, by the names that the kind gives
 * @param start frames that it may have begun with, within 2 σ, where it began slowly
 * @param end the same for its last frame
 */
public record Event(
    EventKind kind,
    int sceneNumber,
    int firstFrame,
    int lastFrame,
    SortedMap<String, Double> sizes,
    FrameSpan start,
    FrameSpan end) {
  public Event {
    Objects.requireNonNull(kind, "kind");
    sizes = Collections.unmodifiableSortedMap(new TreeMap<>(sizes));
    if (firstFrame > lastFrame) {
      throw new IllegalArgumentException(
          "an event ends after it starts, was " + firstFrame + " to " + lastFrame);
    }
  }

  /** Something whose beginning and end are plain. */
  public Event(
      EventKind kind,
      int sceneNumber,
      int firstFrame,
      int lastFrame,
      SortedMap<String, Double> sizes) {
    this(
        kind,
        sceneNumber,
        firstFrame,
        lastFrame,
        sizes,
        FrameSpan.at(firstFrame),
        FrameSpan.at(lastFrame));
  }

  /** The same with what its beginning and end leave open. */
  Event within(FrameSpan from, FrameSpan until) {
    return new Event(kind, sceneNumber, firstFrame, lastFrame, sizes, from, until);
  }

  /** Whether a frame shows it. */
  boolean covers(int frame) {
    return frame >= firstFrame && frame <= lastFrame;
  }

  Event inScene(int number) {
    return new Event(kind, number, firstFrame, lastFrame, sizes, start, end);
  }

  static Event of(EventKind kind, int scene, int first, int last, Map<String, Double> sizes) {
    return new Event(kind, scene, first, last, new TreeMap<>(sizes));
  }
}
