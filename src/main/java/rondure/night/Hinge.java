package rondure.night;

/**
 * A level that holds until one point of a series and grows or falls steadily from there: weighted
 * least squares for each point that can be the hinge, the best of them kept.
 *
 * @param start index of the last value of the level; 0 for a line over the whole series
 * @param earliest first index at which the hinge may be as well: its misfit is within 2 σ of the
 *     best (Δχ² = 4, in units of the scatter that the best leaves)
 * @param latest last such index
 * @param level value until there
 * @param slope per unit of x after it
 * @param misfit sum of squared residuals over variance
 */
record Hinge(int start, int earliest, int latest, double level, double slope, double misfit) {
  /** Δχ² of 2 σ for one parameter. */
  private static final double TWO_SIGMA = 4;

  /** Level, slope, place of the hinge and the scatter. */
  private static final int PARAMETERS = 4;

  /**
   * @param x strictly growing
   * @param sigma standard error of each y, > 0
   * @param leastAfter fewest values after the hinge
   */
  static Hinge of(double[] x, double[] y, double[] sigma, int leastAfter) {
    int places = Math.max(1, x.length - leastAfter);
    Hinge[] all = new Hinge[places];
    Hinge best = at(0, x, y, sigma);
    for (int start = 0; start < places; start++) {
      all[start] = at(start, x, y, sigma);
      best = all[start].misfit < best.misfit ? all[start] : best;
    }
    double scatter = best.misfit / Math.max(1, x.length - PARAMETERS);
    int earliest = best.start;
    int latest = best.start;
    for (int start = 0; start < places; start++) {
      if (all[start].misfit <= best.misfit + TWO_SIGMA * scatter) {
        earliest = Math.min(earliest, start);
        latest = Math.max(latest, start);
      }
    }
    return new Hinge(best.start, earliest, latest, best.level, best.slope, best.misfit);
  }

  private static Hinge at(int start, double[] x, double[] y, double[] sigma) {
    double[] sums = new double[5];
    for (int i = 0; i < x.length; i++) {
      double weight = 1 / (sigma[i] * sigma[i]);
      double u = Math.max(0, x[i] - x[start]);
      sums[0] += weight;
      sums[1] += weight * u;
      sums[2] += weight * u * u;
      sums[3] += weight * y[i];
      sums[4] += weight * u * y[i];
    }
    double determinant = sums[0] * sums[2] - sums[1] * sums[1];
    double slope = (sums[0] * sums[4] - sums[1] * sums[3]) / determinant;
    double level = (sums[3] - slope * sums[1]) / sums[0];
    double misfit = 0;
    for (int i = 0; i < x.length; i++) {
      double rest = y[i] - level - slope * Math.max(0, x[i] - x[start]);
      misfit += rest * rest / (sigma[i] * sigma[i]);
    }
    return new Hinge(start, start, start, level, slope, misfit);
  }
}
