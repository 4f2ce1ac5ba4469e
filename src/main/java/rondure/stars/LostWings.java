package rondure.stars;

import java.util.Arrays;

/**
 * How bright a star must be where a frame does not record the noise of its sky.
 *
 * <p>A sky of one and the same code value (8-bit files of short exposures, denoised or clipped to
 * black) hides all light fainter than a code step, and with it the wings of faint stars: what is
 * left of them looks sharp. Of a Gaussian whose peak stands P steps above the sky, the part below
 * one step holds (1 + ln P) / P of the second moment (by integration); at P = 115 that is 5 %.
 * Where the noise is recorded it carries light fainter than a step, and stars need no such limit.
 */
final class LostWings {
  /** Recorded scatter over a code step below which all within 3 σ of the sky is one value. */
  static final double RECORDED_NOISE = 0.03;

  static final double LEAST_PEAK_STEPS = 115;

  private LostWings() {}

  /** The least height above the sky, counts; 0 where the sky's noise is recorded. */
  static double leastPeakCounts(BackgroundMesh background, PixelContext context) {
    MeshGrid noise = background.cellNoise();
    double[] inSteps = new double[noise.size()];
    int count = 0;
    for (int i = 0; i < noise.size(); i++) {
      double step = CodeSteps.at(context, background.level().cell(i));
      if (!Float.isNaN(noise.cell(i)) && step > 0) {
        inSteps[count++] = noise.cell(i) / step;
      }
    }
    Arrays.sort(inSteps, 0, count);
    boolean recorded = count == 0 || inSteps[count / 2] >= RECORDED_NOISE;
    return recorded ? 0 : LEAST_PEAK_STEPS * context.codeStepCounts();
  }
}
