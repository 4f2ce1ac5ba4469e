package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.Moments;
import rondure.base.PixelPlane;

class StarFinderTest {
  private static final PixelContext LINEAR = new PixelContext(15000, 1, false);
  private static final StarSettings SETTINGS = StarSettings.defaults();

  /** Matched-filter SNR of a Gaussian star: F / (√(4π) σ n); greens carry half the pixels. */
  private static double fluxFor(double snr, double sigma, double noise, boolean bayer) {
    double perPixel = Math.sqrt(4 * Math.PI) * Math.sqrt(sigma * sigma + 1 / 12.0) * noise;
    return snr * perPixel * (bayer ? Math.sqrt(2) : 1);
  }

  @ParameterizedTest
  @CsvSource({"1.2, false", "3, false", "1.6, true", "4, true"})
  void isolatedStarsAreFound(double fwhm, boolean bayer) {
    isolatedStarsOfSignalToNoiseEightAndMoreAreFound(fwhm, bayer);
  }

  @Tag("thorough")
  @ParameterizedTest
  @CsvSource({
    "1.8, false",
    "6, false",
    "12, false",
    "20, false",
    "2.4, true",
    "8, true",
    "20, true"
  })
  void isolatedStarsOfSignalToNoiseEightAndMoreAreFound(double fwhm, boolean bayer) {
    double sigma = fwhm / Moments.FWHM_PER_SIGMA;
    SkyPainter painter = new SkyPainter(1200, 1000, 11).level(300);
    List<double[]> truth = new ArrayList<>();
    double spacing = Math.max(50, 5 * fwhm);
    for (double y = spacing; y < 1000 - spacing; y += spacing) {
      for (double x = spacing; x < 1200 - spacing; x += spacing) {
        double[] star = {x + painter.uniform(0, 2), y + painter.uniform(0, 2)};
        double snr = truth.size() % 2 == 0 ? 8 : painter.uniform(8, 40);
        painter.star(star[0], star[1], fluxFor(snr, sigma, 6, bayer), sigma);
        truth.add(star);
      }
    }
    PixelPlane plane = bayer ? painter.checkerboard(6, 1) : painter.full(6);
    List<Candidate> found = StarFinder.find(plane, LINEAR, SETTINGS).candidates();
    long hits =
        truth.stream()
            .filter(star -> near(found, star[0], star[1], Math.max(2, 0.6 * fwhm)) == 1)
            .count();
    assertTrue(hits >= 0.95 * truth.size(), hits + " of " + truth.size() + " found");
    assertTrue(found.size() - hits <= 4, found.size() - hits + " extra");
  }

  static long near(List<Candidate> found, double x, double y, double radius) {
    return found.stream().filter(c -> Math.hypot(c.xPx() - x, c.yPx() - y) <= radius).count();
  }

  @Tag("thorough")
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void nineMegapixelsOfNoiseGiveAtMostOneDetectionEach(boolean bayer) {
    SkyPainter painter = new SkyPainter(3000, 3000, 22).level(100);
    PixelPlane plane = bayer ? painter.checkerboard(5, 1) : painter.full(5);
    int found = StarFinder.find(plane, LINEAR, SETTINGS).candidates().size();
    assertTrue(found <= 9, found + " false detections on 9 megapixels");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void noiseAloneGivesAtMostOneDetectionPerMegapixel(boolean bayer) {
    SkyPainter painter = new SkyPainter(1000, 1000, 12).level(100);
    PixelPlane plane = bayer ? painter.checkerboard(5, 0) : painter.full(5);
    int found = StarFinder.find(plane, LINEAR, SETTINGS).candidates().size();
    assertTrue(found <= 1, found + " false detections on 1 megapixel");
  }

  /** Skies of −1 to 3 code steps with noise of 0.4 to 1 step, rounded and cut at 0. */
  @ParameterizedTest
  @CsvSource({"-1, 1", "-0.5, 0.5", "0.3, 0.4", "0.5, 0.7", "1, 1", "3, 0.8"})
  void quantisedNoiseGivesAtMostTwoDetectionsPerMegapixel(double level, double noise) {
    float[] samples = new SkyPainter(1000, 1000, 13).level(level).exposed(noise, 0);
    double step = 65535 / 255.0 / 12.92;
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) (step * Math.max(0, Math.rint(samples[i])));
    }
    PixelContext developed = new PixelContext(65535, step, true);
    int found =
        StarFinder.find(PixelPlane.full(1000, 1000, samples), developed, SETTINGS)
            .candidates()
            .size();
    assertTrue(found <= 2, found + " false detections on 1 megapixel");
  }

  /** Noise smoothed by a developer: the kernel's norm alone would promise too low a noise. */
  @Test
  void correlatedNoiseIsNotTakenForStars() {
    float[] raw = new SkyPainter(1000, 1000, 14).level(500).exposed(20, 0);
    float[] smooth = new float[raw.length];
    for (int i = 1001; i < raw.length - 1001; i++) {
      smooth[i] =
          (raw[i] * 4
                  + 2 * (raw[i - 1] + raw[i + 1] + raw[i - 1000] + raw[i + 1000])
                  + raw[i - 1001]
                  + raw[i - 999]
                  + raw[i + 999]
                  + raw[i + 1001])
              / 16;
    }
    for (int i = 0; i < raw.length; i++) {
      smooth[i] = smooth[i] == 0 ? raw[i] : smooth[i];
    }
    List<Candidate> found =
        StarFinder.find(PixelPlane.full(1000, 1000, smooth), LINEAR, SETTINGS).candidates();
    long inside =
        found.stream()
            .filter(c -> Math.min(c.xPx(), c.yPx()) > 4 && Math.max(c.xPx(), c.yPx()) < 995)
            .count();
    assertTrue(inside <= 2, inside + " false detections on 1 megapixel");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void aFrameOfHotPixelsGivesHotPixelsOnly(boolean bayer) {
    SkyPainter painter = new SkyPainter(800, 800, 15).level(20);
    for (int i = 0; i < 300; i++) {
      int x = (int) painter.uniform(4, 796);
      int y = (int) painter.uniform(4, 796);
      painter.hotPixel(bayer ? x - (x + y) % 2 : x, y, 4 * painter.uniform(10, 400));
    }
    PixelPlane plane = bayer ? painter.checkerboard(4, 0) : painter.full(4);
    List<Candidate> found = StarFinder.find(plane, LINEAR, SETTINGS).candidates();
    assertTrue(found.size() > 200, found.size() + " found");
    long others =
        found.stream()
            .filter(c -> !c.refusal().equals(java.util.Optional.of(Refusal.HOT_PIXEL)))
            .count();
    assertTrue(others <= 0.03 * found.size(), others + " of " + found.size() + " not hot");
  }

  /** Second moments of 0.25 px² and more, pixel included, are real stars (common practice). */
  @ParameterizedTest
  @CsvSource({"0.42, false", "0.6, false", "0.6, true", "0.9, true"})
  void sharpStarsAreNotTakenForHotPixels(double sigma, boolean bayer) {
    SkyPainter painter = new SkyPainter(800, 800, 16).level(20);
    int stars = 0;
    for (int y = 40; y < 770; y += 36) {
      for (int x = 40; x < 770; x += 36) {
        double flux = fluxFor(painter.uniform(15, 200), sigma, 4, bayer);
        painter.star(x + painter.uniform(-1, 1), y + painter.uniform(-1, 1), flux, sigma);
        stars++;
      }
    }
    PixelPlane plane = bayer ? painter.checkerboard(4, 1) : painter.full(4);
    List<Candidate> found = StarFinder.find(plane, LINEAR, SETTINGS).candidates();
    long free = found.stream().filter(c -> c.refusal().isEmpty()).count();
    assertTrue(free >= 0.95 * stars, free + " of " + stars + " kept");
  }

  @Test
  void hotPixelsAmongStarsAreToldApart() {
    SkyPainter painter = new SkyPainter(800, 800, 17).level(20);
    for (int i = 0; i < 150; i++) {
      double x = 20 + 760 * ((i * 0.6180339) % 1);
      painter.star(x, 10 + 5.2 * i, 4 * painter.uniform(60, 900), 1.0);
      int hotX = (int) (20 + 760 * ((i * 0.6180339 + 0.5) % 1));
      int hotY = (int) (10 + 5.2 * i);
      painter.hotPixel(hotX - (hotX + hotY) % 2, hotY, 4 * painter.uniform(30, 300));
    }
    List<Candidate> found =
        StarFinder.find(painter.checkerboard(4, 0), LINEAR, SETTINGS).candidates();
    long hot = found.stream().filter(c -> c.refusal().isPresent()).count();
    assertEquals(150, hot, 6);
    assertEquals(300, found.size(), 8);
  }

  @Test
  void fullPixelsAndFlatTopsBelowWhiteAreSaturated() {
    SkyPainter painter = new SkyPainter(600, 600, 18).level(100);
    for (int i = 0; i < 9; i++) {
      painter.star(60 + 55 * i, 150, 200000, 1.5);
      painter.star(60 + 55 * i, 400, 9000, 1.5);
    }
    float[] samples = painter.exposed(5, 0);
    for (int i = 0; i < samples.length; i++) {
      samples[i] = Math.min(samples[i], 9000);
    }
    for (double white : new double[] {9000, 15000}) {
      PixelContext context = new PixelContext(white, 1, false);
      List<Candidate> found =
          StarFinder.find(PixelPlane.full(600, 600, samples.clone()), context, SETTINGS)
              .candidates();
      assertEquals(18, found.size());
      for (Candidate candidate : found) {
        boolean bright = candidate.yPx() < 300;
        assertEquals(
            bright ? "Optional[SATURATED]" : "Optional.empty", candidate.refusal().toString());
      }
    }
  }

  @Test
  void starsCutByTheBorderAreRefused() {
    PixelPlane plane =
        new SkyPainter(300, 300, 19)
            .level(50)
            .star(0.5, 100, 2000, 1.5)
            .star(150, 298.5, 2000, 1.5)
            .star(150, 150, 2000, 1.5)
            .full(4);
    List<Candidate> found = StarFinder.find(plane, LINEAR, SETTINGS).candidates();
    assertEquals(3, found.size());
    assertEquals(
        2,
        found.stream()
            .filter(c -> c.refusal().equals(java.util.Optional.of(Refusal.EDGE)))
            .count());
  }

  @Test
  void missingPixelsNeverPoisonTheirNeighbours() {
    SkyPainter painter = new SkyPainter(400, 400, 20).level(80);
    for (int i = 0; i < 49; i++) {
      painter.star(40 + 50 * (i % 7), 40 + 50 * (i / 7), 1500, 1.3);
    }
    float[] samples = painter.exposed(4, 0);
    float[] holed = samples.clone();
    for (int i = 0; i < holed.length; i++) {
      boolean dead = i % 37 == 0 || i % 400 == 123 || i / 400 > 380;
      holed[i] = dead ? Float.NaN : holed[i];
    }
    for (PixelPlane plane :
        List.of(
            PixelPlane.full(400, 400, holed.clone()),
            PixelPlane.scattered(400, 400, holed.clone()),
            PixelPlane.checkerboard(400, 400, SkyPainter.greens(holed.clone(), 400, 1), 1))) {
      List<Candidate> found = StarFinder.find(plane, LINEAR, SETTINGS).candidates();
      assertEquals(49, found.size(), 1, plane.lattice().toString());
      assertTrue(found.stream().allMatch(c -> c.fluxCounts() > 0));
    }
  }

  @Test
  void planesOfAnySmallSizeAreAnswered() {
    for (int width : new int[] {1, 2, 3, 17, 65}) {
      for (int height : new int[] {1, 2, 5, 64}) {
        float[] samples = new SkyPainter(width, height, 21).level(10).exposed(1, 0);
        Found full =
            StarFinder.find(PixelPlane.full(width, height, samples.clone()), LINEAR, SETTINGS);
        Found bayer =
            StarFinder.find(
                PixelPlane.checkerboard(
                    width, height, SkyPainter.greens(samples.clone(), width, 0), 0),
                LINEAR,
                SETTINGS);
        assertTrue(full.sky().skyShare() > 0);
        assertTrue(bayer.candidates().size() <= 2);
      }
    }
  }
}
