package rondure.sim;

/**
 * The turning sky over a site, from hour angle and declination (spherical astronomy, Meeus,
 * Astronomical Algorithms, ch. 13, from memory).
 *
 * <p>Three frames: <em>equatorial</em> (x to right ascension 0, z to the north celestial pole),
 * <em>ground</em> (east, north, up) and <em>camera</em> (x right, y down, z forward). The local
 * sidereal time is 0 when the first exposure begins.
 */
final class SkyTurn {
  /** Mean sidereal day in seconds (IERS Conventions). */
  static final double SIDEREAL_DAY_SECONDS = 86164.0905;

  private SkyTurn() {}

  /** The matrix from equatorial to ground at a time of the night. */
  static double[] groundFromEquatorial(double latitudeDeg, double nightSeconds) {
    double sidereal = 2 * Math.PI * nightSeconds / SIDEREAL_DAY_SECONDS;
    double cosT = Math.cos(sidereal);
    double sinT = Math.sin(sidereal);
    double cosLat = Math.cos(Math.toRadians(latitudeDeg));
    double sinLat = Math.sin(Math.toRadians(latitudeDeg));
    // H = sidereal time - right ascension: cos δ cos H = c cosT + s sinT, cos δ sin H = c sinT - s
    // cosT for the equatorial vector (c, s, sin δ).
    return new double[] {
      -sinT, cosT, 0, -sinLat * cosT, -sinLat * sinT, cosLat, cosLat * cosT, cosLat * sinT, sinLat
    };
  }

  /** The matrix from ground to camera for an aim. */
  static double[] cameraFromGround(AimPlan aim) {
    double azimuth = Math.toRadians(aim.azimuthDeg());
    double altitude = Math.toRadians(aim.altitudeDeg());
    double roll = Math.toRadians(aim.fullRollDeg());
    double[] right = {Math.cos(azimuth), -Math.sin(azimuth), 0};
    double[] down = {
      Math.sin(altitude) * Math.sin(azimuth),
      Math.sin(altitude) * Math.cos(azimuth),
      -Math.cos(altitude)
    };
    double[] forward = ground(aim.azimuthDeg(), aim.altitudeDeg());
    double[] turn = new double[9];
    for (int i = 0; i < 3; i++) {
      turn[i] = Math.cos(roll) * right[i] + Math.sin(roll) * down[i];
      turn[3 + i] = -Math.sin(roll) * right[i] + Math.cos(roll) * down[i];
      turn[6 + i] = forward[i];
    }
    return turn;
  }

  /** Unit vector (east, north, up) of a direction. */
  static double[] ground(double azimuthDeg, double altitudeDeg) {
    double azimuth = Math.toRadians(azimuthDeg);
    double altitude = Math.toRadians(altitudeDeg);
    return new double[] {
      Math.cos(altitude) * Math.sin(azimuth),
      Math.cos(altitude) * Math.cos(azimuth),
      Math.sin(altitude)
    };
  }

  /** Unit vector (equatorial) of a right ascension and declination. */
  static double[] equatorial(double rightAscensionRad, double declinationRad) {
    return new double[] {
      Math.cos(declinationRad) * Math.cos(rightAscensionRad),
      Math.cos(declinationRad) * Math.sin(rightAscensionRad),
      Math.sin(declinationRad)
    };
  }
}
