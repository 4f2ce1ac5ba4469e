package rondure.blur;

import org.hipparchus.special.BesselJ;

/**
 * Transforms of what is alike in all directions: J0, and that of a disc, 2 J1(z)/z.
 *
 * <p>Tables in steps of 0.02 with straight lines between: good to 5e-5. Beyond the end, 0.
 */
final class RoundWaves {
  private static final double STEP = 0.02;
  private static final int SIZE = 4500;
  private static final double[] J0 = new double[SIZE];
  private static final double[] DISC = new double[SIZE];

  static {
    J0[0] = 1;
    DISC[0] = 1;
    for (int i = 1; i < SIZE; i++) {
      J0[i] = BesselJ.value(0, STEP * i);
      DISC[i] = 2 * BesselJ.value(1, STEP * i) / (STEP * i);
    }
  }

  private RoundWaves() {}

  /** Bessel's J0 of z ≥ 0. */
  static double j0(double z) {
    return at(J0, z);
  }

  /** Transform of a disc of unit light at z = wave number times its radius. */
  static double disc(double z) {
    return at(DISC, z);
  }

  private static double at(double[] table, double z) {
    double place = z / STEP;
    int below = (int) place;
    if (below + 1 >= SIZE) {
      return 0;
    }
    return table[below] + (place - below) * (table[below + 1] - table[below]);
  }
}
