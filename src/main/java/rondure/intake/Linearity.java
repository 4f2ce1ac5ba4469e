package rondure.intake;

/** How far the decoded values can be trusted to be proportional to light. */
public enum Linearity {
  /** Sensor values, black subtracted. */
  SENSOR,
  /** A developed file whose tone curve was known (ICC profile, FITS) and undone. */
  TAGGED,
  /** 16-bit or float without a profile: taken as linear, which the report says. */
  ASSUMED,
  /** JPEG or other 8-bit: the sRGB curve undone; budgets are approximate. */
  DEVELOPED
}
