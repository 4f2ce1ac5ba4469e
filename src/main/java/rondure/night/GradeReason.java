package rondure.night;

/** Why a frame has its grade; the numbers stand beside it. */
public enum GradeReason {
  /** Wider than what the scene's sharpest frames allow: value and limit are ratios. */
  WIDER,
  /** Stars are oval: value and limit are b/a. */
  OVAL,
  /** Every star is there twice. */
  DOUBLE_IMAGE,
  /** Out of focus, with nothing sharp beside it. */
  OUT_OF_FOCUS,
  /** Haze, dew or cloud took light. */
  HAZE,
  /**
   * No use for it: value is the width of the picture up to which stars are points, limit its width
   * at the smallest use, px.
   */
  NO_USE,
  /** As tight and as round as the scene's sharpest: value and limit are ratios. */
  TIGHT
}
