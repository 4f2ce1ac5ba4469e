package rondure.blur;

/**
 * A fitted model of the direction pattern over a frame.
 *
 * @param loss sum over stars of the squared misfit in standard deviations, each at most {@link
 *     #MOST_LOSS_PER_STAR}
 * @param smearPx2 median over the stars of the modelled common smear (spin-2 length)
 * @param radialPx2 radial stretch at the corner of the frame; negative = tangential
 * @param lensPx2 median over the stars of that radial or tangential stretch, unsigned
 * @param at the common smear at any pixel
 */
record SmearModel(double loss, double smearPx2, double radialPx2, double lensPx2, SmearAt at) {

  /** A star that fits worse than 4 σ is something else. */
  static final double MOST_LOSS_PER_STAR = 16;

  /** Spin-2 parts (along, diagonal) of a smear at a pixel, px². */
  @FunctionalInterface
  interface SmearAt {
    double[] spin2(double xPx, double yPx);

    default double lengthPx2(double xPx, double yPx) {
      double[] parts = spin2(xPx, yPx);
      return Math.hypot(parts[0], parts[1]);
    }
  }
}
