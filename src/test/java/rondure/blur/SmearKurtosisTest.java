package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/**
 * Kurtosis of blurs, in closed form: a Gaussian 3, a line 9/5, a disc's profile 2, a sinusoid's
 * dwell 3/2; convolved, fourth cumulants add: κ = 3 + Σ (κᵢ - 3) Mᵢ² / (Σ Mᵢ)².
 */
class SmearKurtosisTest {
  private static final int SIDE = 121;
  private static final int PER_PX = 4;
  private static final double SIGMA = 0.9;

  /** Light of a core at many places, each with the same share. */
  private static AverageGrid grid(int steps, IntFunction<double[]> place) {
    float[] values = new float[SIDE * SIDE];
    for (int step = 0; step < steps; step++) {
      double[] at = place.apply(step);
      for (int i = 0; i < values.length; i++) {
        double x = (i % SIDE - SIDE / 2) / (double) PER_PX - at[0];
        double y = (i / SIDE - SIDE / 2) / (double) PER_PX - at[1];
        values[i] += (float) (Math.exp(-(x * x + y * y) / (2 * SIGMA * SIGMA)) / steps);
      }
    }
    Stamp stamp = new Stamp(SIDE, values);
    return new AverageGrid(new AverageStar(AverageStar.Zone.WHOLE, 40, PER_PX, stamp), 12);
  }

  private static double[] onLine(int step, double lengthPx) {
    return new double[] {lengthPx * ((step + 0.5) / 200 - 0.5), 0};
  }

  private static double[] onSine(int step, double amplitudePx) {
    return new double[] {amplitudePx * Math.sin(2 * Math.PI * step / 200), 0};
  }

  /** A sunflower of points fills the disc evenly. */
  private static double[] onDisc(int step, int steps, double diameterPx) {
    double radius = diameterPx / 2 * Math.sqrt((step + 0.5) / steps);
    double angle = step * Math.PI * (3 - Math.sqrt(5));
    return new double[] {radius * Math.cos(angle), radius * Math.sin(angle)};
  }

  @Test
  void kurtosisOfWholeStarsIsTheClosedForm() {
    assertEquals(3.000, SmearKurtosis.ofStar(grid(1, i -> new double[2]), 0), 0.002);
    assertEquals(2.459, SmearKurtosis.ofStar(grid(900, i -> onDisc(i, 900, 6)), 0), 0.004);
    assertEquals(2.536, SmearKurtosis.ofStar(grid(200, i -> onLine(i, 4)), 0), 0.002);
    assertEquals(2.256, SmearKurtosis.ofStar(grid(200, i -> onLine(i, 6)), 0), 0.002);
    assertEquals(2.240, SmearKurtosis.ofStar(grid(200, i -> onSine(i, 2)), 0), 0.002);
  }

  /** What is round cancels: the smear's own kurtosis is left, whatever the core. */
  @Test
  void theSmearAloneHasItsOwnKurtosis() {
    assertEquals(1.8, SmearKurtosis.of(grid(200, i -> onLine(i, 4))).kurtosis(), 0.005);
    assertEquals(1.8, SmearKurtosis.of(grid(200, i -> onLine(i, 8))).kurtosis(), 0.005);
    assertEquals(1.5, SmearKurtosis.of(grid(200, i -> onSine(i, 3))).kurtosis(), 0.005);
    assertEquals(16 / 12.0, SmearKurtosis.of(grid(200, i -> onLine(i, 4))).stretchPx2(), 0.003);
  }

  /** A vibration that dies away in a tenth of the exposure leaves a bright core: far above 3. */
  @Test
  void aRingingKnockIsPeaked() {
    SmearKurtosis ring =
        SmearKurtosis.of(
            grid(400, i -> new double[] {6 * Math.exp(-i / 40.0) * Math.sin(i * 1.3), 0}));
    assertTrue(ring.kurtosis() > 4, ring.toString());
    assertTrue(ring.skyLogOdds() < -2);
    assertTrue(SmearKurtosis.of(grid(200, i -> onLine(i, 5))).skyLogOdds() > 0.5);
  }
}
