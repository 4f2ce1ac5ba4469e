package rondure.sim;

/** Rotation matrices, 3 x 3, row-major in nine doubles; they act on column vectors. */
final class Turn {
  private Turn() {}

  static double[] times(double[] left, double[] right) {
    double[] product = new double[9];
    for (int row = 0; row < 3; row++) {
      for (int column = 0; column < 3; column++) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
          sum += left[3 * row + i] * right[3 * i + column];
        }
        product[3 * row + column] = sum;
      }
    }
    return product;
  }

  static double[] transposed(double[] turn) {
    return new double[] {
      turn[0], turn[3], turn[6], turn[1], turn[4], turn[7], turn[2], turn[5], turn[8]
    };
  }

  static double[] apply(double[] turn, double[] vector) {
    double[] turned = new double[3];
    for (int row = 0; row < 3; row++) {
      turned[row] =
          turn[3 * row] * vector[0] + turn[3 * row + 1] * vector[1] + turn[3 * row + 2] * vector[2];
    }
    return turned;
  }

  /** The rotation by a rotation vector (rad), after Rodrigues: I + sin θ K + (1 - cos θ) K². */
  static double[] about(double x, double y, double z) {
    double angle = Math.sqrt(x * x + y * y + z * z);
    double[] cross = {0, -z, y, z, 0, -x, -y, x, 0};
    double[] square = times(cross, cross);
    double first = angle < 1e-9 ? 1 : Math.sin(angle) / angle;
    double second = angle < 1e-6 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
    double[] turn = {1, 0, 0, 0, 1, 0, 0, 0, 1};
    for (int i = 0; i < 9; i++) {
      turn[i] += first * cross[i] + second * square[i];
    }
    return turn;
  }
}
