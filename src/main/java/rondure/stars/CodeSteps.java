package rondure.stars;

/** How far apart neighbouring code values of a file lie, in linear counts. */
final class CodeSteps {
  private static final double LINEAR_SLOPE = 12.92;
  private static final double LINEAR_END = 0.0031308;
  private static final double SCALE = 1.055;
  private static final double EXPONENT = 2.4;

  private CodeSteps() {}

  /**
   * The step at a level. Constant, except where the sRGB curve was undone: there it follows the
   * curve's derivative (IEC 61966-2-1), from {@code codeStepCounts} at black.
   */
  static double at(PixelContext context, double levelCounts) {
    double share = levelCounts / context.whiteLevelCounts();
    if (!context.developed() || !(share > LINEAR_END)) {
      return context.codeStepCounts();
    }
    double slope = EXPONENT / SCALE * Math.pow(Math.min(share, 1), 1 - 1 / EXPONENT);
    return context.codeStepCounts() * LINEAR_SLOPE * slope;
  }
}
