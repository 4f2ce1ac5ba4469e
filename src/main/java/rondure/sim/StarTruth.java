package rondure.sim;

/**
 * The truth about one star (or lamp) in one frame, in stored coordinates.
 *
 * @param number of the star in the catalogue, or of the lamp in the plan
 * @param xPx centre of its light; the centre of the first pixel is at 0
 * @param yPx centre of its light
 * @param electrons its whole light through the green filter
 * @param snr signal over noise of a matched filter, F / (√(4π) n σ)
 * @param trailPx length of the trail that the sky's motion draws, end to end
 * @param trailDeg its direction, from +x towards +y, 0 to 180
 * @param xxPx2 second moment of everything together
 * @param xyPx2 second moment of everything together
 * @param yyPx2 second moment of everything together
 */
public record StarTruth(
    int number,
    double xPx,
    double yPx,
    double electrons,
    double snr,
    double trailPx,
    double trailDeg,
    double xxPx2,
    double xyPx2,
    double yyPx2) {

  public StarTruth {
    xPx = rounded(xPx, 1e4);
    yPx = rounded(yPx, 1e4);
    electrons = rounded(electrons, 1);
    snr = rounded(snr, 10);
    trailPx = rounded(trailPx, 1e4);
    trailDeg = rounded(trailDeg, 1e2);
    xxPx2 = rounded(xxPx2, 1e4);
    xyPx2 = rounded(xyPx2, 1e4);
    yyPx2 = rounded(yyPx2, 1e4);
  }

  private static double rounded(double value, double steps) {
    return Math.rint(value * steps) / steps;
  }
}
