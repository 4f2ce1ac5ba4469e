package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import rondure.base.Stamp;
import rondure.stars.AverageStar;
import rondure.stars.StarField;

/**
 * Kurtosis of blurs, in closed form: a Gaussian 3, a line 9/5, a disc's profile 2, a sinusoid's
 * dwell 3/2; convolved, fourth cumulants add: κ = 3 + Σ (κᵢ - 3) Mᵢ² / (Σ Mᵢ)².
 */
class SmearKurtosisTest {
  private static final int SIDE = 121;
  private static final int PER_PX = 4;
  private static final double SIGMA = 0.9;
  private static final SmearDrawing DRAWING = new SmearDrawing(SIDE, PER_PX, SIGMA * SIGMA);

  /** Read without a window that cuts. */
  private static AverageGrid whole(AverageStar star) {
    return new AverageGrid(star, 12);
  }

  private static double ofWhole(AverageStar star) {
    return SmearKurtosis.ofStar(whole(star), 0);
  }

  private static double ofSmear(DoubleUnaryOperator path) {
    return SmearKurtosis.of(whole(DRAWING.along(path))).kurtosis();
  }

  /** Light of a core at many places, each with the same share. */
  private static AverageStar drawn(int steps, IntFunction<double[]> place) {
    float[] values = new float[SIDE * SIDE];
    for (int step = 0; step < steps; step++) {
      double[] at = place.apply(step);
      for (int i = 0; i < values.length; i++) {
        double x = (i % SIDE - SIDE / 2) / (double) PER_PX - at[0];
        double y = (i / SIDE - SIDE / 2) / (double) PER_PX - at[1];
        values[i] += (float) (Math.exp(-(x * x + y * y) / (2 * SIGMA * SIGMA)) / steps);
      }
    }
    return new AverageStar(AverageStar.Zone.WHOLE, 40, PER_PX, new Stamp(SIDE, values));
  }

  /** A sunflower of points fills the disc evenly. */
  private static double[] onDisc(int step, int steps, double diameterPx) {
    double radius = diameterPx / 2 * Math.sqrt((step + 0.5) / steps);
    double angle = step * Math.PI * (3 - Math.sqrt(5));
    return new double[] {radius * Math.cos(angle), radius * Math.sin(angle)};
  }

  @Test
  void kurtosisOfWholeStarsIsTheClosedForm() {
    assertEquals(3.000, ofWhole(DRAWING.along(share -> 0)), 0.002);
    assertEquals(2.459, ofWhole(drawn(900, i -> onDisc(i, 900, 6))), 0.004);
    assertEquals(2.536, ofWhole(DRAWING.line(16 / 12.0)), 0.002);
    assertEquals(2.256, ofWhole(DRAWING.line(36 / 12.0)), 0.002);
    assertEquals(2.240, ofWhole(DRAWING.vibration(2)), 0.002);
  }

  /** What is round cancels: the smear's own kurtosis is left, whatever the core. */
  @Test
  void theSmearAloneHasItsOwnKurtosis() {
    assertEquals(1.8, ofSmear(share -> 4 * share - 2), 0.005);
    assertEquals(1.8, ofSmear(share -> 8 * share - 4), 0.005);
    assertEquals(1.5, ofSmear(share -> 3 * Math.sin(2 * Math.PI * share)), 0.005);
    SmearKurtosis line = SmearKurtosis.of(whole(DRAWING.line(16 / 12.0)));
    assertEquals(16 / 12.0, line.stretchPx2(), 0.003);
  }

  /** A vibration that dies away in a tenth of the exposure leaves a bright core: far above 3. */
  @Test
  void aRingingKnockIsPeaked() {
    assertTrue(ofSmear(share -> 6 * Math.exp(-10 * share) * Math.sin(100 * share)) > 4);
  }

  private static final String ONE =
      "[{\"count\": 1, \"exposureSeconds\": %d, \"intervalSeconds\": 95, \"iso\": 800}]";

  private static SmearKurtosis.Compared simulated(int seconds, String events) {
    StarField field =
        SimScene.of("shots", String.format(ONE, seconds), "events", events).fields().get(0);
    return SmearKurtosis.of(field, FieldShape.of(field)).orElseThrow();
  }

  /**
   * Simulated frames: 60 s of trailing, and a vibration of 2.5 px. In the window the two differ by
   * 0.3, no more than the noise of 40 stars: neither may be misled by more than half a natural
   * unit.
   */
  @Test
  void noiseKeepsTheKurtosisOfOneFrameModest() {
    SmearKurtosis.Compared trail = simulated(60, "[]");
    SmearKurtosis.Compared gust =
        simulated(
            13,
            "[{\"kind\":\"gust\",\"firstFrame\":1,\"lastFrame\":1,\"amplitudePx\":2.5,"
                + "\"acrossShare\":0.1,\"frequencyHz\":5,\"directionDeg\":24}]");
    assertEquals(0.3, trail.ofLine() - trail.ofVibration(), 0.1);
    assertTrue(trail.skyLogOdds() > -0.5, trail.toString());
    assertTrue(gust.skyLogOdds() < 0.5, gust.toString());
    assertTrue(gust.skyLogOdds() < trail.skyLogOdds(), gust + " " + trail);
  }
}
