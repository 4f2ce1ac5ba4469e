package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import rondure.base.PixelPlane;
import rondure.base.Stamp;
import rondure.sim.NightSimulator;
import rondure.sim.SimFrame;
import rondure.stars.AverageStar;
import rondure.stars.PixelContext;
import rondure.stars.StarField;
import rondure.stars.StarMeter;
import rondure.stars.StarSettings;
import rondure.testing.SimNight;

/**
 * Unsharp masking I + a (I - G I) of a Gaussian star is again a sum of two Gaussians: variances add
 * under convolution, so its profile and the depth of its moat are known in closed form.
 */
class DarkRingTest {
  private static final int SIDE = 65;
  private static final int PER_PX = 4;
  private static final double SIGMA = 1.1;
  private static final double MASK_SIGMA = 1.5;
  private static final double AMOUNT = 0.8;

  private static AverageStar star(DoubleUnaryOperator profile) {
    float[] values = new float[SIDE * SIDE];
    for (int i = 0; i < values.length; i++) {
      double radius = Math.hypot(i % SIDE - SIDE / 2, i / SIDE - SIDE / 2) / PER_PX;
      values[i] = (float) profile.applyAsDouble(radius);
    }
    return new AverageStar(AverageStar.Zone.WHOLE, 40, PER_PX, new Stamp(SIDE, values));
  }

  private static double gaussian(double radius, double variance) {
    return Math.exp(-radius * radius / (2 * variance)) / variance;
  }

  private static double sharpened(double radius) {
    double narrow = SIGMA * SIGMA;
    double wide = narrow + MASK_SIGMA * MASK_SIGMA;
    double peak = (1 + AMOUNT) / narrow - AMOUNT / wide;
    return ((1 + AMOUNT) * gaussian(radius, narrow) - AMOUNT * gaussian(radius, wide)) / peak;
  }

  /** The deepest point of the closed form is read to a tenth, at its radius to half a pixel. */
  @Test
  void theMoatOfUnsharpMaskingHasItsDepth() {
    double deepest = 0;
    double at = 0;
    for (double radius = 0; radius < 6; radius += 0.01) {
      if (sharpened(radius) < deepest) {
        deepest = sharpened(radius);
        at = radius;
      }
    }
    DarkRing ring = DarkRing.read(star(DarkRingTest::sharpened)).orElseThrow();
    assertTrue(-deepest > 0.02, "closed form " + deepest);
    assertEquals(-deepest, ring.depthShare(), 0.1 * -deepest);
    assertEquals(at, ring.radiusPx(), 0.5);
  }

  @Test
  void aBareStarHasNone() {
    DarkRing ring = DarkRing.read(star(r -> gaussian(r, 1.2) * 1.2)).orElseThrow();
    assertEquals(0, ring.depthShare(), 0.001);
    DarkRing moffat = DarkRing.read(star(r -> Math.pow(1 + r * r / 3, -3))).orElseThrow();
    assertTrue(moffat.depthShare() < 0.001, moffat.toString());
  }

  /** A simulated frame as it comes, and sharpened: 60 % of the difference to a blur of 1.5 px. */
  @Test
  void onlySharpenedFramesHaveRings() {
    SimFrame frame = NightSimulator.render(SimNight.plan(), 1);
    assertTrue(DarkRing.of(measure(frame, 0)).isEmpty());
    DarkRing ring = DarkRing.of(measure(frame, 0.6)).orElseThrow();
    assertTrue(ring.depthShare() > 0.01 && ring.depthShare() < 0.1, ring.toString());
  }

  private static StarField measure(SimFrame frame, double amount) {
    int width = frame.widthPx();
    int height = frame.heightPx();
    float[] counts = new float[width * height];
    for (int i = 0; i < counts.length; i++) {
      counts[i] = frame.at(i % width, i / width) - frame.plan().camera().blackLevelCounts();
    }
    float[] blurred = across(across(counts, width, 1), width, width);
    for (int i = 0; i < counts.length; i++) {
      counts[i] += (float) (amount * (counts[i] - blurred[i]));
    }
    PixelContext context = new PixelContext(4095, 1, true);
    PixelPlane plane = PixelPlane.full(width, height, counts);
    return StarMeter.measure(plane, context, StarSettings.defaults());
  }

  /** Gaussian blur along rows (step 1) or columns (step = width), edges repeated by wrapping. */
  private static float[] across(float[] from, int width, int step) {
    float[] to = new float[from.length];
    double sum = 0;
    for (int k = -6; k <= 6; k++) {
      sum += Math.exp(-k * k / (2 * MASK_SIGMA * MASK_SIGMA));
    }
    for (int i = 0; i < from.length; i++) {
      double value = 0;
      for (int k = -6; k <= 6; k++) {
        int at = Math.floorMod(i + k * step, from.length);
        value += from[at] * Math.exp(-k * k / (2 * MASK_SIGMA * MASK_SIGMA)) / sum;
      }
      to[i] = (float) value;
    }
    return to;
  }
}
