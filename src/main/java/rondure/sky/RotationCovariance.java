package rondure.sky;

/**
 * Covariance of a small rotation vector in camera axes, rad², a symmetric 3 x 3 matrix.
 *
 * @param xxRad2 variance about x (pitch)
 * @param xyRad2 covariance of pitch and yaw
 * @param xzRad2 covariance of pitch and roll
 * @param yyRad2 variance about y (yaw)
 * @param yzRad2 covariance of yaw and roll
 * @param zzRad2 variance about z (roll)
 */
public record RotationCovariance(
    double xxRad2, double xyRad2, double xzRad2, double yyRad2, double yzRad2, double zzRad2) {

  public RotationCovariance {
    double sum = xxRad2 + xyRad2 + xzRad2 + yyRad2 + yzRad2 + zzRad2;
    if (!Double.isFinite(sum)) {
      throw new IllegalArgumentException("covariance must be finite, its sum was " + sum);
    }
  }

  /** Independent rotations. */
  public static RotationCovariance diagonal(double pitchRad2, double yawRad2, double rollRad2) {
    return new RotationCovariance(pitchRad2, 0, 0, yawRad2, 0, rollRad2);
  }

  /** A steady spin over an exposure: T²/12 ω ωᵀ. */
  public static RotationCovariance ofSpin(Spin spin, double seconds) {
    double scale = seconds * seconds / 12;
    double x = spin.xRadPerS();
    double y = spin.yRadPerS();
    double z = spin.zRadPerS();
    return new RotationCovariance(
        scale * x * x, scale * x * y, scale * x * z, scale * y * y, scale * y * z, scale * z * z);
  }

  public RotationCovariance plus(RotationCovariance o) {
    return new RotationCovariance(
        xxRad2 + o.xxRad2,
        xyRad2 + o.xyRad2,
        xzRad2 + o.xzRad2,
        yyRad2 + o.yyRad2,
        yzRad2 + o.yzRad2,
        zzRad2 + o.zzRad2);
  }

  public RotationCovariance times(double factor) {
    return new RotationCovariance(
        factor * xxRad2,
        factor * xyRad2,
        factor * xzRad2,
        factor * yyRad2,
        factor * yzRad2,
        factor * zzRad2);
  }

  /** S a. */
  Vec times(Vec a) {
    return new Vec(
        xxRad2 * a.x() + xyRad2 * a.y() + xzRad2 * a.z(),
        xyRad2 * a.x() + yyRad2 * a.y() + yzRad2 * a.z(),
        xzRad2 * a.x() + yzRad2 * a.y() + zzRad2 * a.z());
  }

  /** aᵀ S b for two vectors. */
  double between(double aX, double aY, double aZ, double bX, double bY, double bZ) {
    return aX * (xxRad2 * bX + xyRad2 * bY + xzRad2 * bZ)
        + aY * (xyRad2 * bX + yyRad2 * bY + yzRad2 * bZ)
        + aZ * (xzRad2 * bX + yzRad2 * bY + zzRad2 * bZ);
  }
}
