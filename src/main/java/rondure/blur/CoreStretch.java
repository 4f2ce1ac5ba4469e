package rondure.blur;

/**
 * How the light in the rings of a star differs between directions for each px² by which a short
 * smear stretches it: a blur of second moments (q, 0, -q) adds q (I_xx - I_yy) / 2 to the light I
 * (Taylor), that is q cos 2φ (I'' - I'/r) / 2 about a round star, with wings as well as without.
 *
 * <p>The star's form is a Moffat profile (1 + r²/a²)^-β: I'' - I'/r = 4 β (β + 1) r²/a⁴ (1 +
 * r²/a²)^-2 I.
 */
final class CoreStretch {
  private static final double[] BETAS = {2, 2.5, 3, 3.5, 4.5, 6, 9, 15, 40};

  /** Misfits count against this and a tenth of the light. */
  private static final double LEAST_ERROR = 0.01;

  private static final double ERROR_SHARE = 0.1;

  private final double[] perPx2;

  private CoreStretch(double[] perPx2) {
    this.perPx2 = perPx2;
  }

  /** Amplitude of cos 2φ in each ring per px² of stretch. */
  double[] perPx2() {
    return perPx2.clone();
  }

  static CoreStretch of(StretchRings rings) {
    double half = halfRadiusPx(rings);
    double best = Double.POSITIVE_INFINITY;
    double beta = BETAS[0];
    for (double one : BETAS) {
      double misfit = misfit(rings, one, scale2(half, one));
      if (misfit < best) {
        best = misfit;
        beta = one;
      }
    }
    double a2 = scale2(half, beta);
    double[] stretch = new double[rings.count()];
    for (int i = 0; i < stretch.length; i++) {
      double r2 = rings.radiiPx[i] * rings.radiiPx[i];
      double fall = 1 + r2 / a2;
      stretch[i] = 2 * beta * (beta + 1) * r2 / (a2 * a2 * fall * fall) * rings.light[i];
    }
    return new CoreStretch(stretch);
  }

  /** Square of the length a of a profile of this half-maximum radius. */
  private static double scale2(double halfPx, double beta) {
    return halfPx * halfPx / (Math.pow(2, 1 / beta) - 1);
  }

  private static double halfRadiusPx(StretchRings rings) {
    for (int i = 1; i < rings.count(); i++) {
      if (rings.light[i] < 0.5) {
        double over = Math.max(0, rings.light[i - 1] - 0.5);
        double step = Math.max(1e-9, rings.light[i - 1] - rings.light[i]);
        double share = Math.min(1, over / step);
        return rings.radiiPx[i - 1] + share * (rings.radiiPx[i] - rings.radiiPx[i - 1]);
      }
    }
    return rings.radiiPx[rings.count() - 1];
  }

  private static double misfit(StretchRings rings, double beta, double a2) {
    double mm = 0;
    double my = 0;
    double yy = 0;
    for (int i = 0; i < rings.count(); i++) {
      double model = Math.pow(1 + rings.radiiPx[i] * rings.radiiPx[i] / a2, -beta);
      double error = LEAST_ERROR + ERROR_SHARE * model;
      double weight = 1 / (error * error);
      mm += weight * model * model;
      my += weight * model * rings.light[i];
      yy += weight * rings.light[i] * rings.light[i];
    }
    return yy - my * my / mm;
  }
}
