package rondure.stars;

import rondure.base.Moments;

/**
 * A profile averaged over each pixel, for stars so sharp that their light at the pixel's centre is
 * not that of the pixel.
 *
 * <p>The average is a Gauss-Legendre sum of 3 × 3 points (nodes 0 and ±√0.6 half pixels, weights
 * 4/9 and 5/18 along each side), exact for polynomials of degree five. The moments include the
 * pixel box, 1/12 px² per axis; those of the light before the pixels took it up are less by that.
 */
final class PixelAveraged implements Profile {
  /** Variance of the pixel box along an axis, px². */
  static final double BOX_PX2 = 1.0 / 12;

  private static final double[] NODES = {-Math.sqrt(0.15), 0, Math.sqrt(0.15)};
  private static final double[] WEIGHTS = {5.0 / 18, 4.0 / 9, 5.0 / 18};
  private static final int HALVINGS = 20;
  private static final FitPixels ORIGIN = FitPixels.everyPlace(0, 0, 0, 0, 0.5);

  private final Profile light;

  /**
   * @param light the star before the pixels took it up
   */
  PixelAveraged(Profile light) {
    this.light = light;
  }

  private static Moments unboxed(Moments moments) {
    return moments.minus(Moments.round(BOX_PX2));
  }

  @Override
  public double smallestPx2() {
    return BOX_PX2 + light.smallestPx2();
  }

  @Override
  public void evaluate(FitPixels pixels, double xPx, double yPx, Moments moments, double[] out) {
    Moments unboxed = unboxed(moments);
    int size = pixels.count() * STRIDE;
    double[] part = new double[size];
    for (int row = 0; row < NODES.length; row++) {
      for (int column = 0; column < NODES.length; column++) {
        light.evaluate(pixels, xPx - NODES[column], yPx - NODES[row], unboxed, part);
        double weight = WEIGHTS[row] * WEIGHTS[column];
        boolean first = row == 0 && column == 0;
        for (int i = 0; i < size; i++) {
          out[i] = weight * part[i] + (first ? 0 : out[i]);
        }
      }
    }
  }

  /** Wings end where they would for a star of the averaged width. */
  @Override
  public Moments lightMoments(Moments fitted, double windowSigmas) {
    Moments unboxed = unboxed(fitted);
    double averaged = fwhmMajorPx(fitted) * fwhmMinorPx(fitted);
    double bare = light.fwhmMajorPx(unboxed) * light.fwhmMinorPx(unboxed);
    Moments moments = light.lightMoments(unboxed, windowSigmas * Math.sqrt(averaged / bare));
    return moments.plus(Moments.round(BOX_PX2));
  }

  @Override
  public double fwhmMajorPx(Moments moments) {
    return halfMaximumWidth(moments, moments.positionAngleRad(), moments.majorPx2());
  }

  @Override
  public double fwhmMinorPx(Moments moments) {
    return halfMaximumWidth(moments, moments.positionAngleRad() + Math.PI / 2, moments.minorPx2());
  }

  private double halfMaximumWidth(Moments moments, double angleRad, double variancePx2) {
    double[] out = new double[STRIDE];
    evaluate(ORIGIN, 0, 0, moments, out);
    double half = out[0] / 2;
    double inside = 0;
    double outside = 4 * Math.sqrt(variancePx2);
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (inside + outside) / 2;
      evaluate(ORIGIN, middle * Math.cos(angleRad), middle * Math.sin(angleRad), moments, out);
      if (out[0] > half) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return inside + outside;
  }
}
