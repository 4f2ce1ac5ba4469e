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
}
