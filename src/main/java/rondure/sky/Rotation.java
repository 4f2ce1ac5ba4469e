package rondure.sky;

/**
 * A rotation of directions, as a unit quaternion w + xi + yj + zk (right-handed).
 *
 * @param w cosine of half the angle
 * @param x axis component times the sine of half the angle
 * @param y the same
 * @param z the same
 */
public record Rotation(double w, double x, double y, double z) {

  public static final Rotation NONE = new Rotation(1, 0, 0, 0);

  public Rotation {
    if (!(Math.abs(w * w + x * x + y * y + z * z - 1) < 1e-9)) {
      throw new IllegalArgumentException(
          "quaternion must have length 1, was " + w + ", " + x + ", " + y + ", " + z);
    }
  }

  /** The rotation by |v| about v, rad. */
  public static Rotation ofVector(double xRad, double yRad, double zRad) {
    double angle = Math.sqrt(xRad * xRad + yRad * yRad + zRad * zRad);
    double scale = angle < 1e-12 ? 0.5 : Math.sin(angle / 2) / angle;
    return normalised(Math.cos(angle / 2), scale * xRad, scale * yRad, scale * zRad);
  }

  /** What a spin does in some seconds. */
  public static Rotation of(Spin spin, double seconds) {
    return ofVector(
        seconds * spin.xRadPerS(), seconds * spin.yRadPerS(), seconds * spin.zRadPerS());
  }

  /**
   * The rotation that carries two directions to two others: exactly the first pair's bisector, and
   * the plane of the two (TRIAD: Black 1964, AIAA J. 2, 1350; from memory).
   */
  public static Rotation ofPairs(Direction fromA, Direction fromB, Direction toA, Direction toB) {
    return TwoDirections.turn(fromA, fromB, toA, toB);
  }

  /**
   * The rotation of an orthogonal 3 x 3 matrix with determinant 1, rows first (Shepperd 1978, J.
   * Guidance and Control 1, 223; from memory).
   */
  static Rotation ofMatrix(double[][] m) {
    double trace = m[0][0] + m[1][1] + m[2][2];
    double w = 1 + trace;
    double x = 1 + 2 * m[0][0] - trace;
    double y = 1 + 2 * m[1][1] - trace;
    double z = 1 + 2 * m[2][2] - trace;
    double largest = Math.max(Math.max(w, x), Math.max(y, z));
    if (largest == w) {
      return normalised(w, m[2][1] - m[1][2], m[0][2] - m[2][0], m[1][0] - m[0][1]);
    }
    if (largest == x) {
      return normalised(m[2][1] - m[1][2], x, m[0][1] + m[1][0], m[0][2] + m[2][0]);
    }
    if (largest == y) {
      return normalised(m[0][2] - m[2][0], m[0][1] + m[1][0], y, m[1][2] + m[2][1]);
    }
    return normalised(m[1][0] - m[0][1], m[0][2] + m[2][0], m[1][2] + m[2][1], z);
  }

  private static Rotation normalised(double w, double x, double y, double z) {
    double length = Math.sqrt(w * w + x * x + y * y + z * z);
    return new Rotation(w / length, x / length, y / length, z / length);
  }

  public Direction apply(Direction d) {
    double tx = 2 * (y * d.z() - z * d.y());
    double ty = 2 * (z * d.x() - x * d.z());
    double tz = 2 * (x * d.y() - y * d.x());
    return Direction.of(
        d.x() + w * tx + y * tz - z * ty,
        d.y() + w * ty + z * tx - x * tz,
        d.z() + w * tz + x * ty - y * tx);
  }

  /** This rotation, then another. */
  public Rotation then(Rotation o) {
    return normalised(
        o.w * w - o.x * x - o.y * y - o.z * z,
        o.w * x + o.x * w + o.y * z - o.z * y,
        o.w * y - o.x * z + o.y * w + o.z * x,
        o.w * z + o.x * y - o.y * x + o.z * w);
  }

  public Rotation inverse() {
    return new Rotation(w, -x, -y, -z);
  }

  /** Angle in [0, π], rad. */
  public double angleRad() {
    return 2 * Math.atan2(Math.sqrt(x * x + y * y + z * z), Math.abs(w));
  }

  /** The rotation as a spin over one second: axis times angle, rad, angle at most π. */
  public Spin perSecond() {
    double sine = Math.sqrt(x * x + y * y + z * z);
    double sign = w < 0 ? -1 : 1;
    double scale = sine < 1e-12 ? 2 * sign : sign * angleRad() / sine;
    return new Spin(scale * x, scale * y, scale * z);
  }
}
