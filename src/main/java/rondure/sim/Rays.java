package rondure.sim;

import rondure.base.Moments;

/** Where the rays of one star land about its centre, px, each with the same light. Frozen. */
final class Rays {
  private final double[] x;
  private final double[] y;

  Rays(double[] x, double[] y) {
    if (x.length != y.length || x.length == 0) {
      throw new IllegalArgumentException("rays need as many x as y: " + x.length + ", " + y.length);
    }
    this.x = x;
    this.y = y;
  }

  int count() {
    return x.length;
  }

  double x(int i) {
    return x[i];
  }

  double y(int i) {
    return y[i];
  }

  Moments moments() {
    return PathMoments.of(x, y, x.length);
  }
}
