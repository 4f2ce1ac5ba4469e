package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.PixelPlane;

/** What is not measured, and why. */
class RefusalTest {
  private static final StarCanvas.Exposure NIGHT = StarCanvas.Exposure.noisy(10, 3);

  /** A frame of 36 ordinary stars, 60 px apart, with the first at (30, 30). */
  private static StarCanvas ordinary(double flux) {
    StarCanvas canvas = new StarCanvas(360, 360);
    for (int i = 0; i < 36; i++) {
      double x = 30.2 + i % 6 * 60 + 0.07 * i;
      double y = 30.4 + i / 6 * 60 - 0.05 * i;
      canvas.gaussianStar(x, y, flux, 1.1, StarCanvas.point());
    }
    return canvas;
  }

  private static Optional<Refusal> refusalNear(StarField field, double x, double y) {
    return field.others().stream()
        .filter(other -> Math.hypot(other.xPx() - x, other.yPx() - y) < 8)
        .map(Detection::reason)
        .findFirst();
  }

  private static boolean isMeasured(StarField field, double x, double y) {
    return field.stars().stream().anyMatch(star -> Math.hypot(star.xPx() - x, star.yPx() - y) < 3);
  }

  private static StarField measure(StarCanvas canvas) {
    return TestFrames.measure(canvas, NIGHT);
  }

  @Test
  void ordinaryStarsAreAllMeasured() {
    StarField field = measure(ordinary(8000));
    assertEquals(36, field.stars().size());
    for (Refusal reason : field.refused().keySet()) {
      assertEquals(Refusal.TOO_FAINT, reason);
    }
  }

  @Test
  void aPixelAboveNineTenthsOfWhiteIsSaturated() {
    StarCanvas canvas = ordinary(8000).gaussianStar(60, 60, 60_000, 1.1, StarCanvas.point());
    PixelPlane plane = canvas.exposed(NIGHT);
    StarField field = TestFrames.measure(plane, NIGHT, 7000);
    assertEquals(Optional.of(Refusal.SATURATED), refusalNear(field, 60, 60));
    assertTrue(field.stars().stream().allMatch(star -> star.peakFraction() < 0.9));
  }

  @Test
  void crowdingIsJudgedByFluxNotByPresence() {
    StarCanvas canvas =
        ordinary(8000)
            .gaussianStar(60, 60, 12_000, 1.1, StarCanvas.point())
            .gaussianStar(65.6, 60, 6_000, 1.1, StarCanvas.point())
            .gaussianStar(180, 180, 30_000, 1.1, StarCanvas.point())
            .gaussianStar(185.6, 180, 2_500, 1.1, StarCanvas.point());
    PixelPlane plane = canvas.exposed(NIGHT);
    StarField field =
        StarMeter.assemble(
            RoughFinding.find(plane, StarCanvas.flat(NIGHT), 220),
            plane,
            new PixelContext(65535, 0, false),
            StarSettings.defaults());
    assertEquals(Optional.of(Refusal.CROWDED), refusalNear(field, 60, 60));
    assertTrue(isMeasured(field, 180, 180));
    assertEquals(Optional.of(Refusal.CROWDED), refusalNear(field, 185.6, 180));
  }

  @Test
  void aFaintNeighbourDoesNotSwayTheShape() {
    StarCanvas canvas =
        ordinary(8000)
            .gaussianStar(180, 180, 30_000, 1.1, StarCanvas.point())
            .gaussianStar(186, 180, 2_400, 1.1, StarCanvas.point());
    Star star =
        measure(canvas).stars().stream()
            .filter(candidate -> Math.hypot(candidate.xPx() - 180, candidate.yPx() - 180) < 2)
            .findFirst()
            .orElseThrow();
    assertEquals(1.21 + 1.0 / 12, star.moments().xxPx2(), 0.04);
    assertEquals(180, star.xPx(), 0.02);
  }

  @Test
  void aWindowBeyondTheFrameIsRefused() {
    StarField field =
        measure(ordinary(8000).gaussianStar(1.5, 90, 20_000, 1.1, StarCanvas.point()));
    assertEquals(Optional.of(Refusal.EDGE), refusalNear(field, 1.5, 90));
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 1})
  void lightInOnePhotositeIsAHotPixel(int parity) {
    StarCanvas canvas = ordinary(8000).hotPixel(60, 61, 3000).hotPixel(121, 120, 500);
    StarCanvas.Exposure exposure = new StarCanvas.Exposure(100, 10, 0, parity, 3);
    StarField field = TestFrames.measure(canvas, exposure);
    assertEquals(Optional.of(Refusal.HOT_PIXEL), refusalNear(field, 60, 61));
    assertEquals(Optional.of(Refusal.HOT_PIXEL), refusalNear(field, 121, 120));
    assertTrue(field.refused().get(Refusal.HOT_PIXEL) == 2, () -> "" + field.refused());
  }

  @Test
  void aFrameOfHotPixelsAloneHasNoStars() {
    StarCanvas canvas = new StarCanvas(360, 360);
    for (int i = 0; i < 36; i++) {
      canvas.hotPixel(30 + i % 6 * 60, 30 + i / 6 * 60, 900 + 100 * i);
    }
    StarField field = measure(canvas);
    assertEquals(List.of(), field.stars());
    assertEquals(36, field.refused().get(Refusal.HOT_PIXEL));
  }

  @Test
  void sharpUndersampledStarsAreNotTakenForHotPixels() {
    // σ = 0.45 px before the pixel box: 0.29 px², the sharp end of real lenses
    StarCanvas canvas = new StarCanvas(360, 360);
    for (int i = 0; i < 36; i++) {
      double x = 30 + i % 6 * 60 + (i * 0.137) % 1;
      double y = 30 + i / 6 * 60 + (i * 0.291) % 1;
      canvas.gaussianStar(x, y, 6000, 0.45, StarCanvas.point());
    }
    StarField field = measure(canvas);
    assertTrue(field.stars().size() >= 34, () -> "" + field.refused());
    double variance = TestFrames.median(field, star -> star.moments().meanPx2());
    assertEquals(0.45 * 0.45 + 1.0 / 12, variance, 0.04);
  }

  @Test
  void aLoneLongLineIsAStreakButAFrameOfLongLinesIsTrailed() {
    StarCanvas lone = ordinary(8000).gaussianStar(180, 180, 60_000, 1.1, StarCanvas.line(38, 2.0));
    assertEquals(Optional.of(Refusal.STREAK), refusalNear(measure(lone), 180, 180));
    StarCanvas trailed =
        TestFrames.paint(
            new TestFrames.Layout(5, 80),
            40_000,
            1,
            (on, x, y, flux) -> on.gaussianStar(x, y, flux, 1.1, StarCanvas.line(30, 0.4)));
    StarField field = measure(trailed);
    assertEquals(25, field.stars().size());
  }

  @Test
  void starsWithoutSignalForAShapeAreTooFaint() {
    StarCanvas canvas = ordinary(8000);
    double flux = TestFrames.fluxForSnr(12, 10, rondure.base.Moments.round(1.29));
    canvas.gaussianStar(60, 60, flux, 1.1, StarCanvas.point());
    assertEquals(Optional.of(Refusal.TOO_FAINT), refusalNear(measure(canvas), 60, 60));
  }

  @Test
  void candidatesOutsideTheSkyAndThoseRefusedBeforeKeepTheirReason() {
    PixelPlane plane = ordinary(8000).exposed(NIGHT);
    Found all = RoughFinding.find(plane, NIGHT);
    SkyMask half = new SkyMask(180, List.of("11", "00"));
    StarField field =
        StarMeter.assemble(
            new Found(all.background(), half, all.sky(), all.candidates()),
            plane,
            new PixelContext(65535, 0, false),
            StarSettings.defaults());
    assertEquals(18, field.stars().size());
    assertTrue(field.refused().get(Refusal.NOT_SKY) >= 18);
  }

  @Test
  void theBrightestStarsAreKeptWhenThereAreMoreThanTheLimit() {
    PixelPlane plane = ordinary(8000).exposed(NIGHT);
    StarSettings few = new StarSettings(64, 5, 18, 10, 400, 40, 1, 2.5);
    StarField field =
        StarMeter.assemble(
            RoughFinding.find(plane, NIGHT), plane, new PixelContext(65535, 0, false), few);
    assertEquals(10, field.stars().size());
    assertEquals(Map.of(), field.refused());
  }
}
