package rondure.stars;

import java.util.stream.DoubleStream;
import rondure.base.Moments;

/**
 * A star model fitted to pixels.
 *
 * @param settled whether the fit came to rest inside its bounds with a shape that the pixels decide
 * @param xPx centre
 * @param yPx centre
 * @param fluxCounts light of the model
 * @param offsetCounts sky correction found beside the star
 * @param moments second moments of the model, px², pixel box included
 * @param profile the model
 * @param residual how the pixels differ from the model
 * @param errors standard errors
 */
record ShapeFit(
    boolean settled,
    double xPx,
    double yPx,
    double fluxCounts,
    double offsetCounts,
    Moments moments,
    Profile profile,
    Residual residual,
    Errors errors) {

  /**
   * Misfit of a model.
   *
   * @param pixelCount pixels fitted
   * @param squares Σ (data − model)²
   * @param chiSquare the same with the weights of the fit, over the variance of the sky
   * @param signalSquares Σ model²
   * @param gain variance of a pixel above sky noise, per count of the model: photon noise and
   *     misfit; negative by chance
   */
  record Residual(
      int pixelCount, double squares, double chiSquare, double signalSquares, double gain) {}

  /**
   * Variances of the fit, each as a part from the sky noise and a part for each unit of gain:
   * variance = sky + gain · star.
   *
   * @param xxSkyPx4 variance of Mxx from sky noise
   * @param xySkyPx4 variance of Mxy from sky noise
   * @param yySkyPx4 variance of Myy from sky noise
   * @param xxStarPx4 variance of Mxx per gain
   * @param xyStarPx4 variance of Mxy per gain
   * @param yyStarPx4 variance of Myy per gain
   * @param fluxSky variance of a matched flux from sky noise, counts²
   * @param fluxStar variance of a matched flux per gain, counts
   */
  record Errors(
      double xxSkyPx4,
      double xySkyPx4,
      double yySkyPx4,
      double xxStarPx4,
      double xyStarPx4,
      double yyStarPx4,
      double fluxSky,
      double fluxStar) {

    /**
     * Whether the pixels tell the shape at all: every variance is a number, and what the sky's
     * noise leaves open is less than the shape itself. Not so where the model has no end inside the
     * window.
     */
    boolean decide(Moments moments) {
      double most = moments.majorPx2() * moments.majorPx2();
      return DoubleStream.of(xxSkyPx4, xySkyPx4, yySkyPx4).allMatch(v -> v >= 0 && v < most)
          && DoubleStream.of(xxStarPx4, xyStarPx4, yyStarPx4, fluxSky, fluxStar)
              .allMatch(v -> v >= 0 && Double.isFinite(v));
    }
  }
}
