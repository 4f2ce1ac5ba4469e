package rondure.sky;

/**
 * A place on the sensor in stored pixel coordinates, centre of the first pixel at (0, 0).
 *
 * @param xPx to the right
 * @param yPx down
 */
public record ImagePoint(double xPx, double yPx) {

  public double distanceTo(ImagePoint other) {
    return Math.hypot(xPx - other.xPx, yPx - other.yPx);
  }
}
