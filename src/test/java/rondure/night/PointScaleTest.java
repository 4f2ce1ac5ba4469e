package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;

/** How far a picture must shrink for a star to look like a point. */
class PointScaleTest {
  private static final UseSettings SETTINGS = UseSettings.defaults();

  private static Moments star(double majorFwhmPx, double minorFwhmPx) {
    double major = majorFwhmPx / Moments.FWHM_PER_SIGMA;
    double minor = minorFwhmPx / Moments.FWHM_PER_SIGMA;
    return Moments.ofAxes(major * major, minor * minor, 0.3);
  }

  @Test
  void aSmallRoundStarIsAPointAtFullSize() {
    assertEquals(1, PointScale.largest(star(2.4, 2.2), SETTINGS));
    assertTrue(PointScale.largest(star(2.6, 2.6), SETTINGS) < 1);
    assertTrue(PointScale.largest(star(2.4, 1.6), SETTINGS) < 1, "oval");
  }

  /**
   * A Gaussian seen through pixels k times as wide, summed from the normal distribution's integral
   * over each pixel, has at k = 1/s the width that the limit asks for.
   */
  @Test
  void atTheScaleCoarserPixelsSeeALimitingStar() {
    double scale = PointScale.largest(star(6, 6), SETTINGS);
    double optical = Math.sqrt(star(6, 6).xxPx2() - 1 / 12.0);
    double seen = binnedVariance(optical * scale);
    assertEquals(SETTINGS.pointFwhmPx(), Moments.FWHM_PER_SIGMA * Math.sqrt(seen), 1e-6);
  }

  @Test
  void atTheScaleAnOvalStarHasTheLimitingAxisRatio() {
    Moments star = star(3, 1.8);
    double scale = PointScale.largest(star, SETTINGS);
    double major = binnedVariance(Math.sqrt(star.majorPx2() - 1 / 12.0) * scale);
    double minor = binnedVariance(Math.sqrt(star.minorPx2() - 1 / 12.0) * scale);
    assertEquals(SETTINGS.pointAxisRatio(), Math.sqrt(major / minor), 1e-6);
  }

  /** Variance of a Gaussian after pixels of width 1: averaged over where its centre falls. */
  private static double binnedVariance(double sigmaPx) {
    int phases = 16;
    double sum = 0;
    for (int phase = 0; phase < phases; phase++) {
      double centre = phase / (double) phases;
      double mean = 0;
      double square = 0;
      for (int pixel = -40; pixel <= 40; pixel++) {
        double share = below(pixel + 0.5 - centre, sigmaPx) - below(pixel - 0.5 - centre, sigmaPx);
        mean += share * pixel;
        square += share * pixel * pixel;
      }
      sum += square - 2 * mean * centre + centre * centre;
    }
    return sum / phases;
  }

  private static double below(double x, double sigma) {
    return 0.5 * Erf.erfc(-x / (sigma * Math.sqrt(2)));
  }

  @Property
  void aWiderOrMoreOvalStarNeverAllowsMore(
      @ForAll @DoubleRange(min = 0.7, max = 12) double minor,
      @ForAll @DoubleRange(min = 1, max = 3) double ratio,
      @ForAll @DoubleRange(min = 1, max = 2) double more) {
    double here = PointScale.largest(star(minor * ratio, minor), SETTINGS);
    assertTrue(PointScale.largest(star(minor * ratio * more, minor), SETTINGS) <= here + 1e-12);
    assertTrue(here > 0 && here <= 1);
  }
}
