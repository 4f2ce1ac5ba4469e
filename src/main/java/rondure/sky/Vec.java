package rondure.sky;

/** Small sums over vectors of three numbers. */
final class Vec {
  private Vec() {}

  static double[] of(Spin spin) {
    return new double[] {spin.xRadPerS(), spin.yRadPerS(), spin.zRadPerS()};
  }

  static double[] of(Direction d) {
    return new double[] {d.x(), d.y(), d.z()};
  }

  static Spin spin(double[] v) {
    return new Spin(v[0], v[1], v[2]);
  }

  /** Rotation vector of a rotation, rad. */
  static double[] log(Rotation turn) {
    return of(turn.perSecond());
  }

  static double[] turned(Rotation turn, double[] v) {
    double length = length(v);
    if (!(length > 0)) {
      return new double[3];
    }
    return times(of(turn.apply(Direction.of(v[0], v[1], v[2]))), length);
  }

  static double[] plus(double[] a, double[] b) {
    return new double[] {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
  }

  static double[] minus(double[] a, double[] b) {
    return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
  }

  static double[] times(double[] a, double factor) {
    return new double[] {factor * a[0], factor * a[1], factor * a[2]};
  }

  static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  static double length(double[] a) {
    return Math.sqrt(dot(a, a));
  }
}
