package rondure.sim;

/**
 * A lamp in the landscape: it shakes with the camera but does not follow the sky.
 *
 * @param azimuthDeg from north through east
 * @param altitudeDeg above the horizontal
 * @param magnitude brightness on the scale of the stars
 */
public record GroundLight(double azimuthDeg, double altitudeDeg, double magnitude) {

  public GroundLight {
    Checks.within("light azimuthDeg", azimuthDeg, -360, 360);
    Checks.within("light altitudeDeg", altitudeDeg, -90, 90);
    Checks.finite("light magnitude", magnitude);
  }
}
