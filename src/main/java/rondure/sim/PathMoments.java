package rondure.sim;

import rondure.base.Moments;

/** Moments of points of equal weight. */
final class PathMoments {
  private PathMoments() {}

  /** Second central moments of the first {@code count} points, px². */
  static Moments of(double[] x, double[] y, int count) {
    double meanX = mean(x, count);
    double meanY = mean(y, count);
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int i = 0; i < count; i++) {
      xx += (x[i] - meanX) * (x[i] - meanX);
      xy += (x[i] - meanX) * (y[i] - meanY);
      yy += (y[i] - meanY) * (y[i] - meanY);
    }
    return new Moments(xx / count, xy / count, yy / count);
  }

  static double mean(double[] values, int count) {
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += values[i];
    }
    return sum / count;
  }
}
