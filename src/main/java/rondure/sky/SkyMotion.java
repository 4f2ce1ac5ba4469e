package rondure.sky;

import java.util.Optional;

/**
 * How the turning sky moves star images over the sensor of a camera at rest.
 *
 * <p>The pole is always the north celestial pole's direction in camera axes; it may lie behind the
 * camera (southern sites). The sky turns by -ω about it.
 */
public final class SkyMotion {

  /** Mean sidereal day in seconds of UT1 (IERS conventions; Aoki et al. 1982, A&amp;A 105, 359). */
  public static final double SIDEREAL_DAY_SECONDS = 86164.0905;

  /** ω, rad/s. */
  public static final double SIDEREAL_RATE_RAD_PER_S = 2 * Math.PI / SIDEREAL_DAY_SECONDS;

  /** ω, seconds of arc per second. */
  public static final double SIDEREAL_RATE_ARCSEC_PER_S = 360 * 3600 / SIDEREAL_DAY_SECONDS;

  private SkyMotion() {}

  /** Velocity of the star image at a pixel, exact: the flow of the spin -ω n. */
  public static ImageVelocity velocity(Camera camera, Direction northPole, double xPx, double yPx) {
    return camera.flow(Spin.ofSky(northPole), xPx, yPx);
  }

  /**
   * Where the star now at a pixel is after some time, exact (rotation of its direction, projected
   * again); empty when it has left what the camera sees.
   */
  public static Optional<ImagePoint> positionAfter(
      Camera camera, Direction northPole, ImagePoint start, double seconds) {
    return Trail.positionAfter(camera, Spin.ofSky(northPole), start, seconds);
  }

  /** Length of the trail at a pixel, straight-line approximation (good to 0.2 % up to 20 s), px. */
  public static double trailPx(
      Camera camera, Direction northPole, ImagePoint at, double exposureSeconds) {
    return exposureSeconds * velocity(camera, northPole, at.xPx(), at.yPx()).speedPxPerS();
  }

  /**
   * The longest trail that any direction of the pole can give at a pixel: ω T times the largest
   * scale of the image there. For a rectilinear lens without distortion L_max = ω T (f/p)(1 + ρ²),
   * ρ = tangent of the angle off axis. A longer smear is not the sky.
   */
  public static double largestTrailPx(
      Camera camera, double xPx, double yPx, double exposureSeconds) {
    return SIDEREAL_RATE_RAD_PER_S * exposureSeconds * camera.stretch(xPx, yPx).largestPxPerRad();
  }

  /**
   * The small-field trail L = ω T (f/p) cos δ: right on the optical axis only. Off axis it is wrong
   * by up to the square of the secant of the field angle (3.4 times in the corner at 14 mm on 36 ×
   * 24 mm); kept for comparison and for the rules of thumb.
   */
  public static double smallFieldTrailPx(
      double focalLengthPx, double declinationDeg, double exposureSeconds) {
    return SIDEREAL_RATE_RAD_PER_S
        * exposureSeconds
        * focalLengthPx
        * Math.cos(Math.toRadians(declinationDeg));
  }

  /** Declination a pixel looks at, degrees. */
  public static double declinationDeg(Camera camera, Direction northPole, double xPx, double yPx) {
    double sine = camera.direction(xPx, yPx).dot(northPole);
    return Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));
  }
}
