package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;
import rondure.base.PixelPlane;

class OneStarOneSourceTest {
  private static final PixelContext LINEAR = new PixelContext(15000, 1, false);
  private static final StarSettings SETTINGS = StarSettings.defaults();
  private static final double NOISE = 5;

  /** Contrast: surface brightness in the middle of a trail over the pixel noise. */
  @ParameterizedTest
  @CsvSource({"15, 3, false", "60, 8, false", "60, 4, true"})
  void aTrailIsOneSource(double length, double contrast, boolean bayer) {
    aTrailIsOneSourceAsLongAsItIs(length, contrast, bayer);
  }

  @Tag("thorough")
  @ParameterizedTest
  @CsvSource({
    "6, 3, false", "30, 3, false", "60, 3, false", "60, 40, false",
    "10, 4, true", "30, 4, true", "60, 12, true", "60, 60, true"
  })
  void aTrailIsOneSourceAsLongAsItIs(double length, double contrast, boolean bayer) {
    double sigma = 1.0;
    SkyPainter painter = new SkyPainter(1000, 1000, 31).level(200);
    double flux = contrast * NOISE * Math.sqrt(2 * Math.PI) * sigma * length;
    int count = 0;
    for (int y = 70; y < 950; y += 100) {
      for (int x = 70; x < 950; x += 100) {
        painter.trail(x, y, flux, length, Math.toRadians(13 * count), sigma);
        count++;
      }
    }
    PixelPlane plane = bayer ? painter.checkerboard(NOISE, 1) : painter.full(NOISE);
    List<Candidate> found = StarFinder.find(plane, LINEAR, SETTINGS).candidates();
    int single = 0;
    double ratio = 0;
    for (int i = 0; i < count; i++) {
      double x = 70 + 100 * (i % 9);
      double y = 70 + 100 * (i / 9);
      List<Candidate> here =
          found.stream().filter(c -> Math.hypot(c.xPx() - x, c.yPx() - y) < 45).toList();
      if (here.size() == 1) {
        single++;
        ratio += here.get(0).isophotal().majorPx2() / (length * length / 12 + 1.1);
      }
    }
    assertTrue(single >= 0.95 * count, single + " of " + count + " found as one");
    assertEquals(1, ratio / single, 0.4, "second moment along the trail over truth");
  }

  @ParameterizedTest
  @CsvSource({"4, 0, false", "9, 0.4, false", "8, 0, true", "14, 0.4, true"})
  void aSmallDiscOrRingIsOneSource(double diameter, double hole, boolean bayer) {
    aDefocusedDiscOrRingIsOneSource(diameter, hole, bayer);
  }

  @Tag("thorough")
  @ParameterizedTest
  @CsvSource({
    "8, 0, false",
    "14, 0, false",
    "20, 0, false",
    "20, 0.4, false",
    "20, 0.7, false",
    "20, 0, true",
    "20, 0.7, true"
  })
  void aDefocusedDiscOrRingIsOneSource(double diameter, double hole, boolean bayer) {
    for (double contrast : new double[] {5, 60}) {
      SkyPainter painter = new SkyPainter(640, 640, 32).level(200);
      double area = Math.PI / 4 * diameter * diameter * (1 - hole * hole);
      for (int i = 0; i < 49; i++) {
        painter.ring(
            80 + 80 * (i % 7) + painter.uniform(0, 2),
            80 + 80 * (i / 7) + painter.uniform(0, 2),
            contrast * NOISE * area,
            diameter,
            hole,
            0.9);
      }
      float[] samples = painter.exposed(NOISE, NOISE * NOISE / 200);
      PixelPlane plane =
          bayer
              ? PixelPlane.checkerboard(640, 640, SkyPainter.greens(samples, 640, 0), 0)
              : PixelPlane.full(640, 640, samples);
      List<Candidate> found = StarFinder.find(plane, LINEAR, SETTINGS).candidates();
      long single = 0;
      for (int i = 0; i < 49; i++) {
        double x = 81 + 80 * (i % 7);
        double y = 81 + 80 * (i / 7);
        single += StarFinderTest.near(found, x, y, 30) == 1 ? 1 : 0;
      }
      assertTrue(single >= 47, single + " of 49 found as one at contrast " + contrast);
    }
  }

  @ParameterizedTest
  @CsvSource({"2.4, 8, false", "2.4, 8, true", "5, 16, false", "8, 30, true"})
  void twoStarsSideBySideAreTwo(double fwhm, double distance, boolean bayer) {
    double sigma = fwhm / Moments.FWHM_PER_SIGMA;
    SkyPainter painter = new SkyPainter(900, 900, 33).level(200);
    for (int i = 0; i < 64; i++) {
      double angle = Math.toRadians(21 * i);
      double x = 100 + 100 * (i % 8);
      double y = 100 + 100 * (i / 8);
      double flux = 40 * Math.sqrt(4 * Math.PI) * sigma * NOISE;
      painter.star(x, y, flux, sigma);
      painter.star(
          x + distance * Math.cos(angle), y + distance * Math.sin(angle), 0.5 * flux, sigma);
    }
    PixelPlane plane = bayer ? painter.checkerboard(NOISE, 0) : painter.full(NOISE);
    int found = StarFinder.find(plane, LINEAR, SETTINGS).candidates().size();
    assertEquals(128, found, 6);
  }

  @Test
  void aFaintStarInABrightOnesHaloIsASource() {
    PixelPlane plane =
        new SkyPainter(300, 300, 34)
            .level(100)
            .star(150, 150, 60000, 1.5)
            .star(163, 150, 400, 1.5)
            .full(NOISE);
    assertEquals(2, StarFinder.find(plane, LINEAR, SETTINGS).candidates().size());
  }
}
