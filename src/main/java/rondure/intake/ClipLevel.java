package rondure.intake;

import rondure.base.RobustStats;

/**
 * Where a sensor's values really end: many clip well below the white level that the file or its
 * library states.
 */
final class ClipLevel {
  private static final int FEWEST_AT_LIMIT = 10;
  private static final double SIGMAS_ABOVE_SKY = 50;
  private static final int SAMPLES = 10_000;

  private ClipLevel() {}

  /**
   * The largest value, when several pixels share it exactly, far above the sky; else {@code
   * stated}. A larger largest value than stated stays stated.
   */
  static double of(float[] samples, double stated) {
    float largest = Float.NEGATIVE_INFINITY;
    int count = 0;
    for (float sample : samples) {
      if (sample > largest) {
        largest = sample;
        count = 1;
      } else if (sample == largest) {
        count++;
      }
    }
    if (count < FEWEST_AT_LIMIT || largest >= stated || largest <= 0) {
      return stated;
    }
    double[] some = new double[Math.min(SAMPLES, samples.length)];
    for (int i = 0; i < some.length; i++) {
      some[i] = samples[(int) ((long) i * samples.length / some.length)];
    }
    double sky = RobustStats.median(some);
    double sigma = Math.max(1, RobustStats.madSigma(some));
    return largest > sky + SIGMAS_ABOVE_SKY * sigma ? largest : stated;
  }
}
