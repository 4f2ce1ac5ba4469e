package rondure.stars;

/** Why a detection has a place but no shape. */
public enum Refusal {
  /** A pixel is near or above the white level. */
  SATURATED,
  /** A neighbour's light reaches into the measuring window. */
  CROWDED,
  /** The measuring window leaves the frame. */
  EDGE,
  /** The light sits in one photosite. */
  HOT_PIXEL,
  /** Signal too low for a shape. */
  TOO_FAINT,
  /** The estimator did not settle. */
  NOT_SETTLED,
  /** Outside the sky region: a light on the ground, or ground texture. */
  NOT_SKY,
  /** Long, single and unlike its neighbours: aircraft, satellite or meteor. */
  STREAK,
  /** Stays on the sensor while the stars move (set by the set-level check, not by one frame). */
  STATIC
}
