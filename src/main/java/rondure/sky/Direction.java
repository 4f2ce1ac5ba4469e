package rondure.sky;

/**
 * A unit vector in camera axes: x right, y down, z forward (right-handed), as stored on the sensor.
 *
 * @param x component to the right
 * @param y component down
 * @param z component forward, along the optical axis
 */
public record Direction(double x, double y, double z) {

  public Direction {
    double length = Math.sqrt(x * x + y * y + z * z);
    if (!(Math.abs(length - 1) < 1e-9)) {
      throw new IllegalArgumentException(
          "direction must have length 1, was " + x + ", " + y + ", " + z);
    }
  }

  /** The direction of a vector of any length but zero. */
  public static Direction of(double x, double y, double z) {
    double length = Math.sqrt(x * x + y * y + z * z);
    if (!(length > 0 && Double.isFinite(length))) {
      throw new IllegalArgumentException(
          "vector must be finite and not zero, was " + x + ", " + y + ", " + z);
    }
    return new Direction(x / length, y / length, z / length);
  }

  public double dot(Direction other) {
    return x * other.x + y * other.y + z * other.z;
  }

  /**
   * This direction turned right-handedly about an axis (Rodrigues' rotation formula): v cos θ + (k
   * × v) sin θ + k (k · v)(1 - cos θ).
   */
  public Direction rotatedAbout(Direction axis, double angleRad) {
    double cos = Math.cos(angleRad);
    double sin = Math.sin(angleRad);
    double along = axis.dot(this) * (1 - cos);
    return of(
        x * cos + (axis.y * z - axis.z * y) * sin + axis.x * along,
        y * cos + (axis.z * x - axis.x * z) * sin + axis.y * along,
        z * cos + (axis.x * y - axis.y * x) * sin + axis.z * along);
  }
}
