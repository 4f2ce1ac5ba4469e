package rondure.intake;

/**
 * How a code value stands for light: maps a code as a fraction of the largest code, 0 to 1, to
 * linear light as a fraction of white, 0 to 1.
 */
@FunctionalInterface
interface ToneCurve {

  /** The slope of a curve near black is taken over this lowest part of the codes. */
  double NEAR_BLACK = 10.0 / 255;

  /** Codes proportional to light. */
  ToneCurve LINEAR = fraction -> fraction;

  /** The curve of IEC 61966-2-1 (sRGB). */
  ToneCurve SRGB =
      fraction ->
          fraction <= 0.04045 ? fraction / 12.92 : Math.pow((fraction + 0.055) / 1.055, 2.4);

  double light(double fraction);

  /** Light proportional to a power of the code. */
  static ToneCurve power(double exponent) {
    if (!(exponent > 0.1 && exponent < 10)) {
      throw new IllegalArgumentException("exponent must be in (0.1, 10), was " + exponent);
    }
    return exponent == 1 ? LINEAR : fraction -> Math.pow(Math.max(0, fraction), exponent);
  }

  /** A curve through equally spaced points from 0 to 1, straight between them. */
  static ToneCurve points(double... light) {
    double[] table = light.clone();
    int last = table.length - 1;
    return fraction -> {
      double place = Math.min(1, Math.max(0, fraction)) * last;
      int below = Math.min((int) place, last - 1);
      return table[below] + (place - below) * (table[below + 1] - table[below]);
    };
  }

  /** Mean rise of light per rise of code near black; 1 for a linear curve. */
  default double slopeNearBlack() {
    return (light(NEAR_BLACK) - light(0)) / NEAR_BLACK;
  }
}
