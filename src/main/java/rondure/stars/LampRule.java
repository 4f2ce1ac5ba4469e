package rondure.stars;

import rondure.base.Moments;

/**
 * Which lights outside the sky are lamps: compact, alone, and far enough from the sky not to be a
 * star over the horizon. Ground in moonlight is full of bright spots; they stand close together and
 * no star's profile fits them.
 */
final class LampRule {
  /** No other light of a third of its brightness within this distance. */
  private static final double ALONE_PX = 40;

  private static final double ALONE_FLUX = 0.3;
  private static final double REACH_SIGMAS = 5;

  /** As wide across as the stars, to this factor in second moments. */
  private static final double WIDEST_FACTOR = 4;

  private static final double NARROWEST_FACTOR = 0.3;

  /** Unlike the model by less than this share of its signal. */
  private static final double LARGEST_MISFIT = 0.1;

  private LampRule() {}

  /** Before it has a shape. */
  static boolean mayBe(Candidate candidate, SkyMask mask, Neighbours neighbours, double leastSnr) {
    if (candidate.filterSnr() < leastSnr || mask.isNearSky(candidate.xPx(), candidate.yPx())) {
      return false;
    }
    double sigma = ALONE_PX / REACH_SIGMAS;
    Placed room =
        new Placed(
            candidate.xPx(), candidate.yPx(), candidate.fluxCounts(), Moments.round(sigma * sigma));
    return neighbours.near(candidate, room, REACH_SIGMAS, ALONE_FLUX).isEmpty();
  }

  /** By its shape. */
  static boolean isOne(MeasuredShape shape, Typical typical) {
    double across = shape.fit().moments().minorPx2() / typical.moments().minorPx2();
    ShapeFit.Residual residual = shape.fit().residual();
    double noise = residual.pixelCount() * shape.noiseCounts() * shape.noiseCounts();
    return across < WIDEST_FACTOR
        && across > NARROWEST_FACTOR
        && residual.squares() - noise < LARGEST_MISFIT * residual.signalSquares();
  }
}
