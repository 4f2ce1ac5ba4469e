package rondure.blur;

import rondure.base.RobustStats;

/**
 * How one frame's loss of light differs over its field.
 *
 * @param slopeXMag growth to the right over half a diagonal
 * @param slopeYMag growth downwards
 * @param scatterMag scatter about that slope beyond the measuring errors
 * @param meanErrorMag standard error of the mean from the scatter as it is
 */
record FieldLoss(double slopeXMag, double slopeYMag, double scatterMag, double meanErrorMag) {
  private static final int LEAST_FOR_SLOPE = 12;

  /** A residual further out than this many σ has no say in the slope. */
  private static final double OUTLIER_SIGMAS = 3;

  private static final int ROUNDS = 3;

  /** Holds the slope down where the stars stand on one line. */
  private static final double SLOPE_PRIOR = 0.002;

  /** √(π/2): a robust mean is a little worse than a mean. */
  private static final double ROBUST_ERROR = Math.sqrt(Math.PI / 2);

  /**
   * Of one frame's entries.
   *
   * @param residuals of all entries, the frame's mean loss taken off, mag
   */
  static FieldLoss of(StarLight light, int[] entries, double[] residuals) {
    double[] rest = new double[entries.length];
    double[] errors = new double[entries.length];
    for (int k = 0; k < entries.length; k++) {
      rest[k] = residuals[entries[k]];
      errors[k] = light.error[entries[k]];
    }
    double[] slope = entries.length < LEAST_FOR_SLOPE ? new double[2] : slope(light, entries, rest);
    for (int k = 0; k < entries.length; k++) {
      rest[k] -= slope[0] * light.x[entries[k]] + slope[1] * light.y[entries[k]];
    }
    double scatter = entries.length == 0 ? 0 : RobustStats.madSigma(rest);
    double expected = entries.length == 0 ? 0 : RobustStats.median(errors);
    double beyond = Math.sqrt(Math.max(0, scatter * scatter - expected * expected));
    double mean = ROBUST_ERROR * scatter / Math.sqrt(Math.max(1, entries.length));
    return new FieldLoss(slope[0], slope[1], beyond, mean);
  }

  FrameLight.Loss loss(double lossMag, double errorMag, int frames) {
    double error = Math.hypot(errorMag, meanErrorMag);
    return new FrameLight.Loss(lossMag, error, scatterMag, slopeXMag, slopeYMag, frames, 0);
  }

  private static double[] slope(StarLight light, int[] entries, double[] rest) {
    double[] slope = new double[2];
    for (int round = 0; round < ROUNDS; round++) {
      double limit = OUTLIER_SIGMAS * spread(light, entries, rest, slope);
      double xx = SLOPE_PRIOR * entries.length;
      double yy = xx;
      double xy = 0;
      double xm = 0;
      double ym = 0;
      for (int k = 0; k < entries.length; k++) {
        double x = light.x[entries[k]];
        double y = light.y[entries[k]];
        if (Math.abs(rest[k] - slope[0] * x - slope[1] * y) <= limit) {
          xx += x * x;
          xy += x * y;
          yy += y * y;
          xm += x * rest[k];
          ym += y * rest[k];
        }
      }
      double determinant = xx * yy - xy * xy;
      slope = new double[] {(yy * xm - xy * ym) / determinant, (xx * ym - xy * xm) / determinant};
    }
    return slope;
  }

  private static double spread(StarLight light, int[] entries, double[] rest, double[] slope) {
    double[] gaps = new double[entries.length];
    for (int k = 0; k < entries.length; k++) {
      gaps[k] = rest[k] - slope[0] * light.x[entries[k]] - slope[1] * light.y[entries[k]];
    }
    return RobustStats.madSigma(gaps) + 1e-9;
  }
}
