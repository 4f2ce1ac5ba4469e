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
   * The longest trail at an angle off the axis of a lens without distortion, however the camera is
   * turned about its axis, as a multiple of a star's on the equator in the middle of the frame.
   *
   * <p>With the pole turned by φ the image velocity at (X, 0) is ω (f/p) times (A cos φ, c sin φ +
   * d), where c = cos δ, A = c (1 + X²), d = X |sin δ| (the rotational part of rigid image flow);
   * its square is largest at sin φ = c d / (A² - c²), or at φ = 90° where that is above 1.
   *
   * @param tangentOffAxis X, tangent of the angle off the axis, above 0
   */
  public double longestTimesEquator(double tangentOffAxis) {
    if (!(tangentOffAxis > 0 && Double.isFinite(tangentOffAxis))) {
      throw new IllegalArgumentException("tangentOffAxis must be > 0, was " + tangentOffAxis);
    }
    double across = Math.cos(Math.toRadians(declinationDeg));
    double turning = tangentOffAxis * Math.abs(Math.sin(Math.toRadians(declinationDeg)));
    double along = across * (1 + tangentOffAxis * tangentOffAxis);
    double room = along * along - across * across;
    if (across * turning >= room) {
      return across + turning;
    }
    double shift = across * turning;
    return Math.sqrt(along * along + turning * turning + shift * shift / room);
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
