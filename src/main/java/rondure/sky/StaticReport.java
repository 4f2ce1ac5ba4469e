package rondure.sky;

import java.util.List;
import rondure.stars.StarField;

/**
 * The frames of a scene without what stayed on the sensor.
 *
 * @param finding what the sky was seen to do
 * @param fields star lists in the order given; static stars moved to the others
 * @param removed stars moved, per frame
 * @param spots distinct static places
 */
public record StaticReport(
    Finding finding, List<StarField> fields, List<Integer> removed, List<StaticSpot> spots) {

  /** What the sky was seen to do over the scene. */
  public enum Finding {
    /** Detections move over the sensor; the static ones were removed. */
    SKY_MOVES,
    /** Nearly everything stays and is starlike: tracking mount, or aimed at the pole. */
    SKY_STAYS,
    /** Nothing ever moves and nothing proves to be a star: hot pixels or lights on the ground. */
    NOTHING_FOLLOWS_THE_SKY,
    /** Too few frames, detections or too short a span to tell. */
    CANNOT_TELL
  }

  public StaticReport {
    fields = List.copyOf(fields);
    removed = List.copyOf(removed);
    spots = List.copyOf(spots);
  }

  public long count(StaticSpot.Kind kind) {
    return spots.stream().filter(spot -> spot.kind() == kind).count();
  }
}
