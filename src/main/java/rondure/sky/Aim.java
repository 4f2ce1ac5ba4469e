package rondure.sky;

/**
 * Where a level camera points.
 *
 * @param latitudeDeg of the site, north positive
 * @param azimuthDeg of the optical axis, 0 = north, 90 = east
 * @param altitudeDeg of the optical axis above the horizon
 */
public record Aim(double latitudeDeg, double azimuthDeg, double altitudeDeg) {

  public Aim {
    if (!(latitudeDeg >= -90 && latitudeDeg <= 90)) {
      throw new IllegalArgumentException("latitudeDeg must be in [-90, 90], was " + latitudeDeg);
    }
    if (!(altitudeDeg >= -90 && altitudeDeg <= 90)) {
      throw new IllegalArgumentException("altitudeDeg must be in [-90, 90], was " + altitudeDeg);
    }
    if (!Double.isFinite(azimuthDeg)) {
      throw new IllegalArgumentException("azimuthDeg must be finite, was " + azimuthDeg);
    }
  }

  /** The north celestial pole in camera axes. */
  public Direction northPole() {
    double latitude = Math.toRadians(latitudeDeg);
    double azimuth = Math.toRadians(azimuthDeg);
    double altitude = Math.toRadians(altitudeDeg);
    double poleNorth = Math.cos(latitude);
    double poleUp = Math.sin(latitude);
    double right = -Math.sin(azimuth) * poleNorth;
    double up = -Math.sin(altitude) * Math.cos(azimuth) * poleNorth + Math.cos(altitude) * poleUp;
    double forward =
        Math.cos(altitude) * Math.cos(azimuth) * poleNorth + Math.sin(altitude) * poleUp;
    return Direction.of(right, -up, forward);
  }
}
