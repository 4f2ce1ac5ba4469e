package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.Stamp;

/** The drawn star has the moments that closed forms give, and its tail on the right side. */
class LensStarTest {
  private static final int SIDE = 161;
  private static final double CORE_PX = 2;

  private record Seen(Moments moments, double skewX) {}

  private static Seen seen(LensStar star) {
    double half = star.reachPx();
    Stamp stamp = star.stamp(half, SIDE);
    double[] sums = new double[6];
    for (int row = 0; row < SIDE; row++) {
      for (int column = 0; column < SIDE; column++) {
        double x = (2.0 * column / (SIDE - 1) - 1) * half;
        double y = (2.0 * row / (SIDE - 1) - 1) * half;
        double[] powers = {1, x * x, x * y, y * y, x, x * (x * x + y * y)};
        for (int k = 0; k < sums.length; k++) {
          sums[k] += stamp.at(column, row) * powers[k];
        }
      }
    }
    assertEquals(0, sums[4] / sums[0], 0.02, "centroid in the middle");
    return new Seen(
        new Moments(sums[1] / sums[0], sums[2] / sums[0], sums[3] / sums[0]), sums[5] / sums[0]);
  }

  /** Disc, astigmatism and coma as {@link LensSurface#at} adds them, whose formulas have tests. */
  @Property(tries = 40)
  void itsSecondMomentsAreThoseOfTheSurface(
      @ForAll @DoubleRange(min = -1, max = 1) double x,
      @ForAll @DoubleRange(min = -1, max = 1) double y,
      @ForAll @DoubleRange(min = -5, max = 5) double disc) {
    LensSurface lens = new LensSurface(1.5, -2, 3, 2.5, 1.2);
    LensStar star = new LensStar(lens.spot(x / 1.5, y / 1.5, disc, 1), CORE_PX);
    Moments core = Moments.round(Math.pow(CORE_PX / Moments.FWHM_PER_SIGMA, 2));
    Moments told = lens.at(x / 1.5, y / 1.5, disc, 1).plus(core);
    Moments drawn = seen(star).moments();
    double near = 0.02 * told.meanPx2();
    assertEquals(told.xxPx2(), drawn.xxPx2(), near);
    assertEquals(told.xyPx2(), drawn.xyPx2(), near);
    assertEquals(told.yyPx2(), drawn.yyPx2(), near);
  }

  /** Third moment c³/3 by integration over the pupil, outwards: as {@code comaSkewPx} has it. */
  @Test
  void theTailOfComaPointsAwayFromTheCentre() {
    LensSurface lens = new LensSurface(0, 0, 0, 0, 4);
    double right = seen(new LensStar(lens.spot(1, 0, 0, 1), CORE_PX)).skewX();
    double left = seen(new LensStar(lens.spot(-1, 0, 0, 1), CORE_PX)).skewX();
    assertEquals(8 / 3.0, right, 0.06);
    assertEquals(-8 / 3.0, left, 0.06);
  }

  /** FWHM of a Gaussian is its own; a disc much wider than the core is as wide as the disc. */
  @Test
  void theWidthIsThatAtHalfBrightness() {
    LensSurface.Spot point = new LensSurface.Spot(0, 0, 0, 0);
    assertEquals(CORE_PX, new LensStar(point, CORE_PX).widthPx(), 0.02);
    LensSurface.Spot disc = new LensSurface.Spot(16, 16, 0, 0);
    assertEquals(16, new LensStar(disc, CORE_PX).widthPx(), 0.3);
  }

  @Test
  void littleLightIsBeyondItsReach() {
    LensStar star = new LensStar(new LensSurface.Spot(4, 1, 2, 0.7), CORE_PX);
    Stamp stamp = star.stamp(star.reachPx(), SIDE);
    for (int i = 0; i < SIDE; i++) {
      assertTrue(stamp.at(i, 0) < 0.02 && stamp.at(0, i) < 0.02, "at the rim");
    }
  }
}
