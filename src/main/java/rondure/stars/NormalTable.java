package rondure.stars;

/** The standard normal density and its integral, from tables: error below 1e-6. */
final class NormalTable {
  private static final double REACH = 7;
  private static final int STEPS_PER_UNIT = 512;
  private static final int ENTRIES = (int) (2 * REACH) * STEPS_PER_UNIT + 2;
  private static final double[] DENSITY = new double[ENTRIES];
  private static final double[] INTEGRAL = new double[ENTRIES];

  static {
    double sum = 0;
    for (int i = 0; i < ENTRIES; i++) {
      double x = (double) i / STEPS_PER_UNIT - REACH;
      DENSITY[i] = density(x);
      if (i > 0) {
        double middle = density(x - 0.5 / STEPS_PER_UNIT);
        sum += (DENSITY[i - 1] + 4 * middle + DENSITY[i]) / (6 * STEPS_PER_UNIT);
      }
      INTEGRAL[i] = sum;
    }
  }

  private NormalTable() {}

  private static double density(double x) {
    return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
  }

  /** e^(−x²/2)/√(2π). */
  static double densityAt(double x) {
    return lookUp(DENSITY, x);
  }

  /** ∫ of the density from −∞ to x. */
  static double integralTo(double x) {
    return lookUp(INTEGRAL, x);
  }

  private static double lookUp(double[] table, double x) {
    double place = (Math.max(-REACH, Math.min(REACH, x)) + REACH) * STEPS_PER_UNIT;
    int entry = (int) place;
    return table[entry] + (place - entry) * (table[entry + 1] - table[entry]);
  }
}
