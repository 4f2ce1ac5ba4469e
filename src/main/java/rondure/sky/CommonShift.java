package rondure.sky;

/**
 * A motion shared by all detections that nearly stay: a shift and a turn, fitted by least squares.
 *
 * @param motionPx r.m.s. length of the fitted motion over the detections
 * @param scatterPx r.m.s. distance from the fit, per axis
 * @param pairs detections matched
 */
record CommonShift(double motionPx, double scatterPx, int pairs) {
  private static final int LEAST_PAIRS = 5;
  private static final int PARAMETERS = 3;

  static final CommonShift NONE = new CommonShift(0, Double.NaN, 0);

  /** A motion that is neither noise (4 σ) nor negligible: hot pixels stay within 0.05 px. */
  boolean isReal() {
    double noise = scatterPx * Math.sqrt(PARAMETERS / (double) Math.max(1, pairs));
    return pairs >= LEAST_PAIRS && motionPx > 0.05 && motionPx > 4 * noise;
  }

  /** The motion between two frames of what stayed within {@code radiusPx}. */
  static CommonShift between(Spots before, Spots after, double radiusPx) {
    double[] xs = new double[before.count()];
    double[] ys = new double[before.count()];
    double[] shiftX = new double[before.count()];
    double[] shiftY = new double[before.count()];
    int pairs = 0;
    for (int i = 0; i < before.count(); i++) {
      int found = after.grid().nearest(before.xs[i], before.ys[i], radiusPx);
      if (found >= 0) {
        xs[pairs] = before.xs[i];
        ys[pairs] = before.ys[i];
        shiftX[pairs] = after.xs[found] - before.xs[i];
        shiftY[pairs] = after.ys[found] - before.ys[i];
        pairs++;
      }
    }
    return pairs < LEAST_PAIRS ? NONE : fit(xs, ys, shiftX, shiftY, pairs);
  }

  // With centred positions shift and turn separate:
  // turn = Σ (x dy - y dx) / Σ (x² + y²), shift = mean (dx, dy).
  private static CommonShift fit(
      double[] xs, double[] ys, double[] shiftX, double[] shiftY, int pairs) {
    double meanX = mean(xs, pairs);
    double meanY = mean(ys, pairs);
    double meanShiftX = mean(shiftX, pairs);
    double meanShiftY = mean(shiftY, pairs);
    double cross = 0;
    double radius = 1e-12;
    for (int i = 0; i < pairs; i++) {
      cross += (xs[i] - meanX) * shiftY[i] - (ys[i] - meanY) * shiftX[i];
      radius += Math.pow(xs[i] - meanX, 2) + Math.pow(ys[i] - meanY, 2);
    }
    double turn = cross / radius;
    double motion = 0;
    double rest = 0;
    for (int i = 0; i < pairs; i++) {
      double fitX = meanShiftX - turn * (ys[i] - meanY);
      double fitY = meanShiftY + turn * (xs[i] - meanX);
      motion += fitX * fitX + fitY * fitY;
      rest += Math.pow(shiftX[i] - fitX, 2) + Math.pow(shiftY[i] - fitY, 2);
    }
    double freedom = Math.max(1, 2 * pairs - PARAMETERS);
    return new CommonShift(Math.sqrt(motion / pairs), Math.sqrt(rest / freedom), pairs);
  }

  private static double mean(double[] values, int count) {
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += values[i];
    }
    return sum / count;
  }
}
