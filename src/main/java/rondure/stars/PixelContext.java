package rondure.stars;

/**
 * What the meter must know about the counts of a plane.
 *
 * @param whiteLevelCounts counts above black at which a pixel is full
 * @param codeStepCounts distance of neighbouring code values near black; half of it is a noise
 *     floor
 * @param developed true for 8-bit files whose sRGB curve was undone
 */
public record PixelContext(double whiteLevelCounts, double codeStepCounts, boolean developed) {
  public PixelContext {
    if (!(whiteLevelCounts > 0)) {
      throw new IllegalArgumentException("whiteLevelCounts must be > 0, was " + whiteLevelCounts);
    }
    if (!(codeStepCounts >= 0)) {
      throw new IllegalArgumentException("codeStepCounts must be >= 0, was " + codeStepCounts);
    }
  }
}
