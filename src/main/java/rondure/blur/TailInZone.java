package rondure.blur;

/**
 * A fading swing fitted to the rings of one zone's average star, beside a short smear of the core.
 *
 * @param along cos 2φ part of the swing's τ/T
 * @param diagonal sin 2φ part
 * @param error standard error of either
 * @param coreAlongPx2 the core's own stretch
 * @param coreDiagonalPx2 the same, sin 2φ part
 * @param px2PerPart stretch (spin-2) of the swing for each unit of τ/T
 * @param chi2 of the fit
 * @param freedom values less parameters
 */
record TailInZone(
    double along,
    double diagonal,
    double error,
    double coreAlongPx2,
    double coreDiagonalPx2,
    double px2PerPart,
    double chi2,
    int freedom) {

  /**
   * The fit.
   *
   * @param reachPx amplitude of the swing as it begins
   * @param sigmaPx of the core across the swing
   */
  static TailInZone of(StretchRings rings, double[] core, double reachPx, double sigmaPx) {
    double[] swing = FadingSwing.stretch(reachPx, sigmaPx, rings.radiiPx);
    double[] weights = new double[swing.length];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = 1 / (rings.errors[i] * rings.errors[i]);
    }
    double cc = dot(core, core, weights);
    double cs = dot(core, swing, weights);
    double ss = dot(swing, swing, weights);
    double determinant = Math.max(1e-300, cc * ss - cs * cs);
    double[] x = solved(rings.along, core, swing, weights);
    double[] y = solved(rings.diagonal, core, swing, weights);
    double chi2 =
        chi2(rings.along, core, swing, weights, x) + chi2(rings.diagonal, core, swing, weights, y);
    double partOfLight = 2 * Math.PI * sigmaPx * sigmaPx / rings.fluxPx2();
    return new TailInZone(
        x[1],
        y[1],
        Math.sqrt(cc / determinant),
        x[0],
        y[0],
        partOfLight * FadingSwing.secondMomentPx2(reachPx) / 2,
        chi2,
        2 * swing.length - 4);
  }

  private static double[] solved(double[] seen, double[] core, double[] swing, double[] weights) {
    double cc = dot(core, core, weights);
    double cs = dot(core, swing, weights);
    double ss = dot(swing, swing, weights);
    double c = dot(core, seen, weights);
    double s = dot(swing, seen, weights);
    double determinant = Math.max(1e-300, cc * ss - cs * cs);
    return new double[] {(ss * c - cs * s) / determinant, (cc * s - cs * c) / determinant};
  }

  private static double chi2(
      double[] seen, double[] core, double[] swing, double[] weights, double[] fit) {
    double sum = 0;
    for (int i = 0; i < seen.length; i++) {
      double off = seen[i] - fit[0] * core[i] - fit[1] * swing[i];
      sum += weights[i] * off * off;
    }
    return sum;
  }

  private static double dot(double[] one, double[] other, double[] weights) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += weights[i] * one[i] * other[i];
    }
    return sum;
  }
}
