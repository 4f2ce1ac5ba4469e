package rondure.report.picture;

import java.awt.Color;

/** An average star as a picture, in display orientation: faint light lifted. */
final class StarTones {
  /** Softening of the tones: light at this share of the peak is still well seen. */
  private static final double TONE = 0.06;

  private StarTones() {}

  /** The tone of light, a share of the peak. */
  static Color of(double value) {
    return new Color(tone(value));
  }

  /** From the dark of the night to white. */
  private static int tone(double value) {
    double clamped = Double.isFinite(value) ? Math.max(0, Math.min(1, value)) : 0;
    double stretched = asinh(clamped / TONE) / asinh(1 / TONE);
    int red = (int) Math.round(18 + 237 * stretched);
    int green = (int) Math.round(26 + 229 * stretched);
    int blue = (int) Math.round(44 + 211 * stretched);
    return red << 16 | green << 8 | blue;
  }

  private static double asinh(double x) {
    return Math.log(x + Math.sqrt(x * x + 1));
  }
}
