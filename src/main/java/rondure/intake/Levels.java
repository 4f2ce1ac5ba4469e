package rondure.intake;

/**
 * What the counts of a decoded frame mean.
 *
 * @param whiteCounts counts above black at which a pixel is full
 * @param stepCounts counts between neighbouring codes near black; 0 for floating-point files
 * @param linearity how the values became linear
 */
record Levels(double whiteCounts, double stepCounts, Linearity linearity) {

  Levels {
    if (!(whiteCounts > 0) || !(stepCounts >= 0)) {
      throw new IllegalArgumentException(
          "white must be > 0 and step >= 0, were " + whiteCounts + ", " + stepCounts);
    }
  }

  /**
   * Levels of floating-point data, whose range no header states: data up to about 1 is a fraction
   * of white, data up to 65535 is 16-bit counts, larger data has its own largest value as white.
   *
   * @param largest the largest value of the picture
   */
  static Levels ofFloats(double largest, Linearity linearity) {
    double white = largest <= 16 ? 1 : Math.max(CodeScale.WHITE_COUNTS, largest);
    return new Levels(white, 0, linearity);
  }

  /** The factor that brings white to {@link CodeScale#WHITE_COUNTS}. */
  float toWhite() {
    return (float) (CodeScale.WHITE_COUNTS / whiteCounts);
  }

  /** These levels after the plane was multiplied by {@link #toWhite()}. */
  Levels atWhite() {
    return new Levels(CodeScale.WHITE_COUNTS, stepCounts * toWhite(), linearity);
  }
}
