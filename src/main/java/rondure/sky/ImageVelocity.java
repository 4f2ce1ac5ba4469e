package rondure.sky;

/**
 * How fast something moves over the sensor.
 *
 * @param xPxPerS to the right
 * @param yPxPerS down
 */
public record ImageVelocity(double xPxPerS, double yPxPerS) {

  public double speedPxPerS() {
    return Math.hypot(xPxPerS, yPxPerS);
  }

  /** Direction of motion, from +x towards +y, in (-π, π]. */
  public double directionRad() {
    return Math.atan2(yPxPerS, xPxPerS);
  }
}
