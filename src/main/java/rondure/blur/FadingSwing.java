package rondure.blur;

/**
 * The light that a swing which dies away draws beside a star: x = A e^(-t/τ) sin ωt, many swings
 * long. At amplitude a it spends τ da/a, at place u of a swing of amplitude a the share 1/(π √(a² -
 * u²)), so that the share of the exposure T at u is (τ/T) arccos(|u|/A) / (π |u|), with the second
 * moment (τ/T) A²/4 (as of a decaying vibration, A² τ/(4 T)).
 */
final class FadingSwing {
  private static final int STEPS = 40;
  private static final int DIRECTIONS = 8;

  private FadingSwing() {}

  /** Second moment along the swing, px², for τ/T = 1. */
  static double secondMomentPx2(double reachPx) {
    return reachPx * reachPx / 4;
  }

  /**
   * Amplitude of cos 2φ in rings about a Gaussian star of peak 1 that swings along x, for τ/T = 1;
   * what is in the swing's path is taken out of the middle.
   *
   * @param reachPx A
   * @param sigmaPx of the star
   */
  static double[] stretch(double reachPx, double sigmaPx, double[] radiiPx) {
    double[] amplitudes = new double[radiiPx.length];
    for (int d = 0; d < DIRECTIONS; d++) {
      // Even in x and y: one quadrant tells all.
      double angle = (d + 0.5) / DIRECTIONS * Math.PI / 2;
      for (int i = 0; i < radiiPx.length; i++) {
        double x = radiiPx[i] * Math.cos(angle) / sigmaPx;
        double y = radiiPx[i] * Math.sin(angle) / sigmaPx;
        double moved = Math.exp(-y * y / 2) * moved(x, reachPx / sigmaPx);
        amplitudes[i] += 2 * Math.cos(2 * angle) * moved / DIRECTIONS;
      }
    }
    return amplitudes;
  }

  /** Along a line through the star, lengths in σ: light come less light gone. */
  private static double moved(double x, double reach) {
    double sum = 0;
    double middle = Math.exp(-x * x / 2);
    for (int k = 0; k < STEPS; k++) {
      double share = (k + 0.5) / STEPS;
      double u = share * reach;
      double time = Math.acos(share) / (Math.PI * share) / STEPS;
      double left = Math.exp(-(x + u) * (x + u) / 2);
      double right = Math.exp(-(x - u) * (x - u) / 2);
      sum += time * (left + right - 2 * middle);
    }
    return sum;
  }
}
