package rondure.sky;

import java.util.Optional;

/**
 * A place on the sensor where a detection stayed while the sky moved.
 *
 * @param xPx mean position, stored pixel coordinates
 * @param yPx mean position
 * @param kind what it is
 * @param firstFrame index of the first frame it was seen in
 * @param lastFrame index of the last
 * @param seenCount frames it was seen in
 * @param fwhmPx mean half-maximum width, 0 for single photosites; empty if it was never measured
 */
public record StaticSpot(
    double xPx,
    double yPx,
    Kind kind,
    int firstFrame,
    int lastFrame,
    int seenCount,
    Optional<Double> fwhmPx) {

  /** What stays on the sensor. */
  public enum Kind {
    /** Light in a single photosite, or narrower than any star of the scene. */
    HOT_PIXEL,
    /** As wide as a star: a lamp or its reflection. */
    GROUND_LIGHT
  }
}
