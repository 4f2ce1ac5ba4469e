package rondure.sky;

/** The rotation that two pairs of directions fix. */
final class TwoDirections {
  private TwoDirections() {}

  static Rotation turn(Direction fromA, Direction fromB, Direction toA, Direction toB) {
    double[][] from = axes(fromA, fromB);
    double[][] to = axes(toA, toB);
    double[][] matrix = new double[3][3];
    for (int row = 0; row < 3; row++) {
      for (int column = 0; column < 3; column++) {
        for (int k = 0; k < 3; k++) {
          matrix[row][column] += to[k][row] * from[k][column];
        }
      }
    }
    return Rotation.ofMatrix(matrix);
  }

  /** Right-handed axes: the bisector, the normal of the plane, and what completes them. */
  private static double[][] axes(Direction a, Direction b) {
    double[] bisector = unit(a.x() + b.x(), a.y() + b.y(), a.z() + b.z());
    double[] normal =
        unit(
            a.y() * b.z() - a.z() * b.y(),
            a.z() * b.x() - a.x() * b.z(),
            a.x() * b.y() - a.y() * b.x());
    double[] third = {
      bisector[1] * normal[2] - bisector[2] * normal[1],
      bisector[2] * normal[0] - bisector[0] * normal[2],
      bisector[0] * normal[1] - bisector[1] * normal[0]
    };
    return new double[][] {bisector, normal, third};
  }

  private static double[] unit(double x, double y, double z) {
    double length = Math.sqrt(x * x + y * y + z * z);
    return new double[] {x / length, y / length, z / length};
  }
}
