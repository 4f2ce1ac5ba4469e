package rondure.intake;

import java.util.Locale;
import rondure.base.FrameProblem;
import rondure.base.RobustStats;

/**
 * Whether the values of a format that may hold any numbers can be light at all. Noise about a zero
 * sky is; a picture that is far below zero, or values near the end of what numbers reach, is not.
 */
final class CountRange {
  /** A thousand million electrons a pixel, and a thousand for odd units. */
  static final double LARGEST = 1e12;

  private static final int SAMPLES = 10_000;

  private CountRange() {}

  /**
   * @param samples the plane; NaN where there is no value
   */
  static void check(float[] samples) throws FrameProblem {
    float least = 0;
    float largest = 0;
    for (float sample : samples) {
      least = Math.min(least, Float.isNaN(sample) ? 0 : sample);
      largest = Math.max(largest, Float.isNaN(sample) ? 0 : sample);
    }
    if (largest > LARGEST || least < -LARGEST) {
      throw new FrameProblem(
          String.format(
              Locale.ROOT,
              "its values reach from %.1e to %.1e, which is no light; export it anew",
              least,
              largest));
    }
    if (least < -largest && median(samples) < -largest) {
      throw new FrameProblem(
          "most of its values are far below zero, which is no light; export it anew");
    }
  }

  private static double median(float[] samples) {
    double[] some = new double[Math.min(SAMPLES, samples.length)];
    for (int i = 0; i < some.length; i++) {
      float sample = samples[(int) ((long) i * samples.length / some.length)];
      some[i] = Float.isNaN(sample) ? 0 : sample;
    }
    return RobustStats.median(some);
  }
}
