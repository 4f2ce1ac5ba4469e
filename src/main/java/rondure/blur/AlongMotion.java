package rondure.blur;

/**
 * How far a frame's stars are stretched along their known motion, and how far across it.
 *
 * <p>The spin-2 parts of the stars, s, are fitted as {@code a m + b m⊥ + r₂ ρ² + r₄ ρ⁴}: m what the
 * motion does in a second, m⊥ the same turned by 45° on the sky, ρ² and ρ⁴ the lens's radial
 * stretch. A line of T seconds has a = T² and b = 0; shake has any a and b.
 *
 * @param along a, s²
 * @param across b, s²
 * @param errorOfBoth standard error of a and of b, with what smooth lens models leave
 */
record AlongMotion(double along, double across, double errorOfBoth) {
  private static final int TERMS = 4;
  private static final int ROUNDS = 5;
  private static final double HUBER = 1.345;

  /** What lens models leave of uniform spin-2, px², and how alike neighbouring stars are. */
  private static final double MODEL_ERROR_PX2 = 0.03;

  private static final double DAMPING = 1e-6;
  private static final double SURE = 3;

  /** Tangent of twice 7°: directions are that good. */
  private static final double ALIGNED_SHARE = 0.25;

  /**
   * @param stars of a frame, their motion that of one second
   */
  static AlongMotion of(FrameStars stars) {
    double[] solution = new double[TERMS];
    double[][] normal = new double[TERMS][TERMS];
    for (int round = 0; round < ROUNDS; round++) {
      normal = new double[TERMS][TERMS];
      double[] right = new double[TERMS];
      for (int i = 0; i < stars.count; i++) {
        add(stars, i, round == 0 ? 1 : weight(stars, i, solution), solution, normal, right);
      }
      solution = new SymmetricSolve(normal, DAMPING).solve(right);
    }
    double perSquareSecond = Math.max(1e-12, meanSquare(stars));
    double error = MODEL_ERROR_PX2 / Math.sqrt(perSquareSecond);
    return new AlongMotion(
        solution[0], solution[1], Math.hypot(error, 1 / Math.sqrt(Math.max(1e-12, normal[0][0]))));
  }

  private static void add(
      FrameStars stars,
      int i,
      double weight,
      double[] solution,
      double[][] normal,
      double[] right) {
    for (int part = 1; part <= 2; part++) {
      double[] row = row(stars, i, part);
      double error = stars.error[3 * i + part];
      for (int j = 0; j < TERMS; j++) {
        right[j] += weight * row[j] * stars.seen[3 * i + part] / (error * error);
        for (int k = 0; k < TERMS; k++) {
          normal[j][k] += weight * row[j] * row[k] / (error * error);
        }
      }
    }
  }

  private static double weight(FrameStars stars, int i, double[] solution) {
    double square = 0;
    for (int part = 1; part <= 2; part++) {
      double[] row = row(stars, i, part);
      double misfit = stars.seen[3 * i + part];
      for (int j = 0; j < TERMS; j++) {
        misfit -= solution[j] * row[j];
      }
      square += Math.pow(misfit / stars.error[3 * i + part], 2) / 2;
    }
    return square <= HUBER * HUBER ? 1 : HUBER / Math.sqrt(square);
  }

  private static double[] row(FrameStars stars, int i, int part) {
    double[] moved = stars.places.moved;
    double x = stars.places.x[i];
    double y = stars.places.y[i];
    double radial = part == 1 ? x * x - y * y : 2 * x * y;
    double turned = part == 1 ? -moved[3 * i + 2] : moved[3 * i + 1];
    return new double[] {moved[3 * i + part], turned, radial, radial * (x * x + y * y)};
  }

  /** Mean over the stars of the squared spin-2 of one second's motion, px⁴ s⁻⁴. */
  private static double meanSquare(FrameStars stars) {
    double sum = 0;
    for (int i = 0; i < stars.count; i++) {
      sum += Math.pow(stars.places.moved[3 * i + 1], 2);
      sum += Math.pow(stars.places.moved[3 * i + 2], 2);
    }
    return sum / Math.max(1, stars.count);
  }

  /** Whether the stretch has the motion's direction, as far as errors let one tell. */
  boolean isAligned() {
    double most = Math.max(SURE * errorOfBoth, ALIGNED_SHARE * along);
    return Math.abs(across) < most && along > -SURE * errorOfBoth;
  }
}
