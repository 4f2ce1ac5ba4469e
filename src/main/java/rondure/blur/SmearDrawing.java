package rondure.blur;

import java.util.function.DoubleUnaryOperator;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/**
 * Draws a smeared star as an average star's picture shows one: a Gaussian core at many places of a
 * level path.
 *
 * @param sidePx of the picture
 * @param samplesPerPx its grid
 * @param corePx2 variance of the core
 */
record SmearDrawing(int sidePx, int samplesPerPx, double corePx2) {
  private static final int PLACES = 100;

  /** With the grid of a given picture. */
  static SmearDrawing like(AverageStar average, double corePx2) {
    return new SmearDrawing(average.stamp().sidePx(), average.samplesPerPx(), corePx2);
  }

  /** An even line: L = √(12 M). */
  AverageStar line(double stretchPx2) {
    double length = Math.sqrt(12 * stretchPx2);
    return along(share -> length * (share - 0.5));
  }

  /** Full swings of a sinusoid: A = √(2 M). */
  AverageStar vibration(double stretchPx2) {
    double amplitude = Math.sqrt(2 * stretchPx2);
    return along(share -> amplitude * Math.sin(2 * Math.PI * share));
  }

  /** Along a path, px, over shares of the exposure; the peak is 1. */
  AverageStar along(DoubleUnaryOperator path) {
    double[] columns = new double[sidePx];
    double[] rows = new double[sidePx];
    for (int i = 0; i < sidePx; i++) {
      double at = (i - sidePx / 2) / (double) samplesPerPx;
      rows[i] = Math.exp(-at * at / (2 * corePx2));
      for (int place = 0; place < PLACES; place++) {
        double off = at - path.applyAsDouble((place + 0.5) / PLACES);
        columns[i] += Math.exp(-off * off / (2 * corePx2)) / PLACES;
      }
    }
    double peak = java.util.Arrays.stream(columns).max().orElse(1);
    float[] values = new float[sidePx * sidePx];
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) (columns[i % sidePx] / peak * rows[i / sidePx]);
    }
    return new AverageStar(AverageStar.Zone.WHOLE, 1, samplesPerPx, new Stamp(sidePx, values));
  }
}
