package rondure.blur;

import java.util.List;
import rondure.base.RobustStats;
import rondure.stars.Star;

/**
 * The stars' wing ratios less 1 as a straight line over 1 / flux (counts), by least squares with
 * Huber's weights.
 *
 * @param start at 1 / flux = 0: what stars without end in brightness would have
 * @param startError standard error of that
 * @param slope counts
 * @param slopeError standard error of that
 */
record WingLine(double start, double startError, double slope, double slopeError) {
  /** Stars differ in their wing ratio by more than noise: sampling, lens. */
  private static final double LEAST_ERROR = 0.02;

  private static final int STEPS = 15;
  private static final double HUBER = 1.345;

  /**
   * @param noiseCounts of the sky in the area between the apertures
   */
  static WingLine of(List<Star> stars, double noiseCounts) {
    double[] x = stars.stream().mapToDouble(s -> 1 / s.fluxCounts()).toArray();
    double[] y = stars.stream().mapToDouble(s -> s.wingRatio() - 1).toArray();
    double[] sigma = new double[x.length];
    double[] weight = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      sigma[i] = Math.hypot(noiseCounts * x[i], LEAST_ERROR);
      weight[i] = 1 / (sigma[i] * sigma[i]);
    }
    WingLine line = fitted(x, y, weight, 1);
    for (int step = 0; step < STEPS; step++) {
      double[] off = new double[x.length];
      for (int i = 0; i < x.length; i++) {
        off[i] = (y[i] - line.start - line.slope * x[i]) / sigma[i];
      }
      double scale = Math.max(1, RobustStats.madSigma(off));
      for (int i = 0; i < x.length; i++) {
        double down = Math.min(1, HUBER * scale / Math.max(1e-9, Math.abs(off[i])));
        weight[i] = down / (sigma[i] * sigma[i]);
      }
      line = fitted(x, y, weight, scale);
    }
    return line;
  }

  private static WingLine fitted(double[] x, double[] y, double[] weight, double scale) {
    double sum = 0;
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < x.length; i++) {
      sum += weight[i];
      meanX += weight[i] * x[i];
      meanY += weight[i] * y[i];
    }
    meanX /= sum;
    meanY /= sum;
    double xx = Double.MIN_NORMAL;
    double xy = 0;
    for (int i = 0; i < x.length; i++) {
      xx += weight[i] * (x[i] - meanX) * (x[i] - meanX);
      xy += weight[i] * (x[i] - meanX) * (y[i] - meanY);
    }
    double slope = xy / xx;
    return new WingLine(
        meanY - slope * meanX,
        scale * Math.sqrt(1 / sum + meanX * meanX / xx),
        slope,
        scale / Math.sqrt(xx));
  }
}
