package rondure.sky;

import java.util.List;

/**
 * What pairs of directions tell of a small rotation between them: Σ (I - s sᵀ) / σ², rad⁻², s the
 * direction of each (Shuster &amp; Oh 1981, J. Guidance and Control 4, 70).
 */
record Information(double xx, double xy, double xz, double yy, double yz, double zz) {

  /** Least share of the determinant in the cube of the mean: directions within 1″ are one line. */
  private static final double LEAST_SHARE = 1e-10;

  static Information of(List<DirectionPair> pairs, Rotation rotation) {
    double[] sum = new double[6];
    for (DirectionPair pair : pairs) {
      Direction s = rotation.apply(pair.from());
      double weight = 1 / (pair.errorRad() * pair.errorRad());
      sum[0] += weight * (1 - s.x() * s.x());
      sum[1] -= weight * s.x() * s.y();
      sum[2] -= weight * s.x() * s.z();
      sum[3] += weight * (1 - s.y() * s.y());
      sum[4] -= weight * s.y() * s.z();
      sum[5] += weight * (1 - s.z() * s.z());
    }
    return of(sum);
  }

  /** Of displacements in the image with an error of 1 px each: Σ BᵀB. */
  static Information ofFlows(List<FlowJacobian> flows) {
    double[] sum = new double[6];
    flows.forEach(flow -> add(sum, flow, 1));
    return of(sum);
  }

  /** Adds Bᵀ w B. */
  static void add(double[] sum, FlowJacobian b, double weight) {
    sum[0] += weight * (b.xByX() * b.xByX() + b.yByX() * b.yByX());
    sum[1] += weight * (b.xByX() * b.xByY() + b.yByX() * b.yByY());
    sum[2] += weight * (b.xByX() * b.xByZ() + b.yByX() * b.yByZ());
    sum[3] += weight * (b.xByY() * b.xByY() + b.yByY() * b.yByY());
    sum[4] += weight * (b.xByY() * b.xByZ() + b.yByY() * b.yByZ());
    sum[5] += weight * (b.xByZ() * b.xByZ() + b.yByZ() * b.yByZ());
  }

  /** Its six entries, row by row of the upper triangle. */
  static Information of(double[] sum) {
    return new Information(sum[0], sum[1], sum[2], sum[3], sum[4], sum[5]);
  }

  private double determinant() {
    return xx * (yy * zz - yz * yz) - xy * (xy * zz - yz * xz) + xz * (xy * yz - yy * xz);
  }

  boolean isRegular() {
    double mean = (xx + yy + zz) / 3;
    return determinant() > LEAST_SHARE * mean * mean * mean;
  }

  /** The covariance of the rotation vector, by cofactors. */
  RotationCovariance inverse() {
    double scale = 1 / determinant();
    return new RotationCovariance(
        scale * (yy * zz - yz * yz),
        scale * (xz * yz - xy * zz),
        scale * (xy * yz - xz * yy),
        scale * (xx * zz - xz * xz),
        scale * (xy * xz - xx * yz),
        scale * (xx * yy - xy * xy));
  }
}
