package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.PixelPlane;

/** Painted landscapes: does the mask keep the sky and drop the ground? */
class SkyRegionTest {
  private static final PixelContext LINEAR = new PixelContext(15000, 1, false);
  private static final int WIDTH = 1280;
  private static final int HEIGHT = 960;

  private static SkyPainter starrySky(long seed, SkyPainter.Surface level, int stars) {
    SkyPainter painter = new SkyPainter(WIDTH, HEIGHT, seed).add(level);
    for (int i = 0; i < stars; i++) {
      double flux = 400 * Math.pow(painter.uniform(0.001, 1), -0.8);
      painter.star(painter.uniform(0, WIDTH), painter.uniform(0, HEIGHT), flux, 1.1);
    }
    return painter;
  }

  private static double vignetted(int x, int y, double centre, double loss) {
    double radius = Math.hypot(x - WIDTH / 2.0, y - HEIGHT / 2.0) / 800;
    return centre * (1 - loss * radius * radius);
  }

  private static Found find(SkyPainter painter) {
    PixelPlane plane = PixelPlane.full(WIDTH, HEIGHT, painter.exposed(5, 0.3));
    return StarFinder.find(plane, LINEAR, StarSettings.defaults());
  }

  /** Shares of the pixels right: of the sky kept, and of the ground dropped, 100 px apart. */
  private static void check(SkyMask mask, int horizonY, double skyShare, double groundShare) {
    int skyKept = 0;
    int sky = 0;
    int groundDropped = 0;
    int ground = 0;
    for (int y = 5; y < HEIGHT; y += 10) {
      for (int x = 5; x < WIDTH; x += 10) {
        if (y < horizonY - 50) {
          sky++;
          skyKept += mask.isSky(x, y) ? 1 : 0;
        } else if (y > horizonY + 50) {
          ground++;
          groundDropped += mask.isSky(x, y) ? 0 : 1;
        }
      }
    }
    assertTrue(
        skyKept >= skyShare * sky,
        "sky kept: " + skyKept + " of " + sky + " in\n" + String.join("\n", mask.rows()));
    assertTrue(
        groundDropped >= groundShare * ground,
        "ground dropped: " + groundDropped + " of " + ground);
  }

  @Test
  void aStrongVignetteIsAllSky() {
    Found found = find(starrySky(51, (x, y) -> vignetted(x, y, 800, 0.7), 400));
    assertEquals(1, found.sky().skyShare(), 0.005);
    assertEquals(600, found.sky().levelCounts(), 200);
    assertEquals(found.sky().levelCounts() / 15000, found.sky().levelFraction(), 1e-9);
    assertEquals(0, found.sky().clippedShare(), 0.01);
  }

  @ParameterizedTest
  @ValueSource(ints = {700, 480, 250})
  void aDarkForegroundIsDroppedEvenWhenItFillsMostOfTheFrame(int horizonY) {
    SkyPainter painter = starrySky(52, (x, y) -> vignetted(x, y, 700, 0.5), 500);
    painter.replace((x, y) -> y > horizonY + 20 * Math.sin(x / 90.0) ? 60 : Double.NaN);
    check(find(painter).mask(), horizonY, 0.97, 0.97);
  }

  /** A bright city sky shows few stars, and the land below it half as many lamps for its size. */
  @Test
  void darkLandIsNoSkyForItsLamps() {
    SkyPainter painter = new SkyPainter(WIDTH, HEIGHT, 59).add((x, y) -> 3000 + y);
    painter.replace((x, y) -> y > 560 ? 500 : Double.NaN);
    for (int i = 0; i < 60; i++) {
      painter.star(painter.uniform(20, 1260), painter.uniform(20, 500), 9000, 1.3);
    }
    for (int i = 0; i < 24; i++) {
      painter.star(painter.uniform(20, 1260), painter.uniform(620, 940), 9000, 1.1);
    }
    check(find(painter).mask(), 560, 0.97, 0.97);
  }

  @Test
  void aMoonlitTexturedForegroundBrighterThanTheSkyIsDropped() {
    SkyPainter painter = starrySky(53, (x, y) -> vignetted(x, y, 500, 0.3), 500);
    painter.replace((x, y) -> y > 600 ? 1200 + 500 * texture(x, y) : Double.NaN);
    check(find(painter).mask(), 600, 0.97, 0.95);
  }

  @Test
  void rocksAsBrightAsTheSkyAreToldByTheirTexture() {
    SkyPainter painter = starrySky(54, (x, y) -> vignetted(x, y, 500, 0.3), 500);
    painter.replace((x, y) -> y > 600 ? 480 + 250 * texture(x, y) : Double.NaN);
    check(find(painter).mask(), 600, 0.97, 0.95);
  }

  /** Fixed pseudo-random texture with grain of one to eight pixels. */
  private static double texture(int x, int y) {
    double sum = 0;
    for (int grain = 1; grain <= 8; grain *= 2) {
      long hash = ((x / grain) * 73856093L) ^ ((y / grain) * 19349663L) ^ (grain * 83492791L);
      hash = (hash ^ (hash >>> 13)) * 0x9E3779B97F4A7C15L;
      sum += ((hash >>> 40) / (double) (1 << 24) - 0.5) / 2;
    }
    return sum;
  }

  @Test
  void cityGlowAtTheHorizonAndTheMilkyWayAreSky() {
    SkyPainter painter =
        starrySky(
            55,
            (x, y) ->
                vignetted(x, y, 400, 0.4)
                    + 2500 * Math.exp((y - 720) / 130.0)
                    + 500 * Math.exp(-Math.pow((x - y * 0.5 - 400) / 90.0, 2)),
            700);
    painter.replace((x, y) -> y > 720 ? 40 : Double.NaN);
    check(find(painter).mask(), 720, 0.97, 0.97);
  }

  @Test
  void auroraAndCloudAreSky() {
    SkyPainter painter =
        starrySky(
            56,
            (x, y) ->
                300
                    + 600 * Math.pow(Math.max(0, Math.sin(x / 90.0 + y / 200.0)), 4)
                    + 150 * Math.sin(x / 210.0) * Math.cos(y / 150.0),
            400);
    assertEquals(1, find(painter).sky().skyShare(), 0.03);
  }

  @Test
  void theMoonIsAHoleInTheSkyAndIsClosed() {
    SkyPainter painter = starrySky(57, (x, y) -> vignetted(x, y, 500, 0.3), 400);
    painter.add((x, y) -> 14000 * Math.exp(-Math.hypot(x - 600, y - 400) / 25));
    assertEquals(1, find(painter).sky().skyShare(), 0.01);
  }

  @Test
  void lightsOnTheGroundAreNotSky() {
    SkyPainter painter = starrySky(58, (x, y) -> vignetted(x, y, 700, 0.4), 500);
    painter.replace((x, y) -> y > 640 ? 50 : Double.NaN);
    for (int i = 0; i < 20; i++) {
      painter.star(60 + 60 * i, 760 + (i % 3) * 30, 3000, 1.4);
    }
    Found found = find(painter);
    long lights =
        found.candidates().stream()
            .filter(
                c -> c.yPx() > 720 && c.refusal().equals(java.util.Optional.of(Refusal.NOT_SKY)))
            .count();
    assertEquals(
        20, lights, 1, found.candidates().stream().filter(c -> c.yPx() > 720).toList().toString());
  }

  @Test
  void whereTheSkyIsClippedToBlackAllIsSky() {
    SkyPainter painter = starrySky(59, (x, y) -> 0, 300);
    painter.replace((x, y) -> y > 700 ? 400 + 200 * texture(x, y) : Double.NaN);
    float[] samples = painter.exposed(3, 0);
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) (20 * Math.max(0, Math.rint((samples[i] - 10) / 20)));
    }
    Found found =
        StarFinder.find(
            PixelPlane.full(WIDTH, HEIGHT, samples),
            new PixelContext(65535, 20, true),
            StarSettings.defaults());
    assertEquals(1, found.sky().skyShare(), 0);
    assertTrue(found.sky().clippedShare() > 0.5);
  }
}
