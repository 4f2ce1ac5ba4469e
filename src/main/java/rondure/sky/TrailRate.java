package rondure.sky;

import java.util.Optional;

/**
 * How fast the sky draws a trail in the middle of the frame, in proportion to the exposure: ω (f/p)
 * cos δ.
 *
 * @param focalLengthPx f/p, focal length over pixel pitch
 * @param declinationDeg δ of the middle of the frame, -90 to 90
 */
public record TrailRate(double focalLengthPx, double declinationDeg) {

  /** Nearer a pole than this, degrees, the middle of the frame does not tell of the rest. */
  private static final double NEAREST_TO_POLE_DEG = 0.1;

  public TrailRate {
    if (!(focalLengthPx > 0 && Double.isFinite(focalLengthPx))) {
      throw new IllegalArgumentException("focalLengthPx must be > 0, was " + focalLengthPx);
    }
    if (!(Math.abs(declinationDeg) <= 90)) {
      throw new IllegalArgumentException(
          "declinationDeg must be between -90 and 90, was " + declinationDeg);
    }
  }

  /** Of a lens before a sensor. */
  public static TrailRate of(
      double focalLengthMm, double pixelPitchMicrons, double declinationDeg) {
    return new TrailRate(1000 * focalLengthMm / pixelPitchMicrons, declinationDeg);
  }

  /** Length of the trail, px. */
  public double trailPx(double exposureSeconds) {
    return SkyMotion.smallFieldTrailPx(focalLengthPx, declinationDeg, exposureSeconds);
  }

  /** The exposure that draws a trail; empty at a celestial pole, where none does. */
  public Optional<Double> secondsFor(double trailPx) {
    if (!(trailPx > 0 && Double.isFinite(trailPx))) {
      throw new IllegalArgumentException("trailPx must be > 0, was " + trailPx);
    }
    return Math.abs(declinationDeg) > 90 - NEAREST_TO_POLE_DEG
        ? Optional.empty()
        : Optional.of(trailPx / trailPx(1));
  }

  /**
   * Customary exposures around the one that draws a trail of a length on the celestial equator: one
   * step below it and on, to where aims near the pole draw as much.
   *
   * @param count how many
   */
  public double[] customarySeconds(double trailPx, int count) {
    double limit = new TrailRate(focalLengthPx, 0).secondsFor(trailPx).orElseThrow();
    int power = (int) Math.floor(Math.log(limit) / Math.log(2)) - 1;
    double[] seconds = new double[count];
    for (int i = 0; i < count; i++) {
      seconds[i] = customary(power + i);
    }
    return seconds;
  }

  /** Dials say 15, 30, 60 for 16, 32, 64 (nominal exposure times, common practice). */
  private static double customary(int power) {
    return power < 4 ? Math.pow(2, power) : 15 * Math.pow(2, power - 4.0);
  }
}
