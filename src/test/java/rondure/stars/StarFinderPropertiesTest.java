package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import rondure.base.PixelPlane;

class StarFinderPropertiesTest {
  private static final int SIDE = 512;
  private static final StarSettings SETTINGS = StarSettings.defaults();

  private static float[] sky(long seed) {
    SkyPainter painter = new SkyPainter(SIDE, SIDE, seed).level(150);
    for (int i = 0; i < 64; i++) {
      double flux = 300 * Math.pow(painter.uniform(0.001, 1), -0.8);
      double x = 36 + 63 * (i % 8) + painter.uniform(-10, 10);
      double y = 36 + 63 * (i / 8) + painter.uniform(-10, 10);
      painter.star(x, y, flux, 1.2);
    }
    return painter.exposed(4, 0.2);
  }

  private static List<Candidate> find(float[] samples, boolean bayer, double white) {
    PixelPlane plane =
        bayer
            ? PixelPlane.checkerboard(SIDE, SIDE, SkyPainter.greens(samples.clone(), SIDE, 1), 1)
            : PixelPlane.full(SIDE, SIDE, samples);
    return StarFinder.find(plane, new PixelContext(white, white / 15000, false), SETTINGS)
        .candidates();
  }

  /** Turns and flips of the square; all keep (x + y) mod 2 apart from a change of parity. */
  private static int moved(int index, int turn) {
    int x = index % SIDE;
    int y = index / SIDE;
    for (int i = 0; i < turn % 4; i++) {
      int next = SIDE - 1 - y;
      y = x;
      x = next;
    }
    return turn >= 4 ? x * SIDE + y : y * SIDE + x;
  }

  /** The sides are whole mesh cells: else the mesh, counted from the top left, falls elsewhere. */
  @Property(tries = 12)
  void turningTheFrameTurnsTheDetections(
      @ForAll @IntRange(min = 1, max = 7) int turn, @ForAll @IntRange(max = 1000) int seed) {
    float[] samples = sky(seed);
    float[] turned = new float[samples.length];
    for (int i = 0; i < samples.length; i++) {
      turned[moved(i, turn)] = samples[i];
    }
    List<Candidate> before = find(samples, false, 15000);
    List<Candidate> after = find(turned, false, 15000);
    assertTrue(before.size() > 20);
    for (Candidate c : before) {
      if (c.filterSnr() > 8) {
        int peak = moved(c.peakYPx() * SIDE + c.peakXPx(), turn);
        long same = after.stream().filter(d -> alike(c, d, peak % SIDE, peak / SIDE, 1)).count();
        assertEquals(1, same, c + " after turn " + turn);
      }
    }
    assertEquals(before.size(), after.size(), 2);
  }

  @Tag("thorough")
  @Property(tries = 300)
  void turningAnyOfManyFramesTurnsTheDetections(
      @ForAll @IntRange(min = 1, max = 7) int turn, @ForAll @IntRange(max = 100000) int seed) {
    turningTheFrameTurnsTheDetections(turn, seed);
  }

  @Property(tries = 12)
  void detectionsDoNotDependOnTheUnitOfCounts(
      @ForAll @IntRange(min = -3, max = 3) int power,
      @ForAll @IntRange(max = 1000) int seed,
      @ForAll boolean bayer) {
    double unit = 1.7 * Math.pow(10, power);
    float[] samples = sky(seed);
    float[] scaled = new float[samples.length];
    for (int i = 0; i < samples.length; i++) {
      scaled[i] = (float) (samples[i] * unit);
    }
    List<Candidate> before = find(samples, bayer, 15000);
    List<Candidate> after = find(scaled, bayer, 15000 * unit);
    assertEquals(before.size(), after.size(), 1);
    for (Candidate c : before) {
      if (c.filterSnr() > 8) {
        long same = after.stream().filter(d -> alike(c, d, c.peakXPx(), c.peakYPx(), unit)).count();
        assertEquals(1, same, c + " in units of " + unit);
      }
    }
  }

  private static boolean alike(Candidate c, Candidate d, int peakX, int peakY, double unit) {
    return Math.hypot(d.peakXPx() - peakX, d.peakYPx() - peakY) < 3
        && (c.filterSnr() < 20 || Math.abs(d.fluxCounts() / c.fluxCounts() / unit - 1) < 0.05)
        && d.refusal().equals(c.refusal());
  }

  @Property(tries = 6)
  void brightestComeFirst(@ForAll @IntRange(max = 1000) int seed) {
    List<Candidate> found = find(sky(seed), true, 15000);
    for (int i = 1; i < found.size(); i++) {
      assertTrue(found.get(i - 1).fluxCounts() >= found.get(i).fluxCounts());
    }
  }
}
