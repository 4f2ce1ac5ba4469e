package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/** Shapes follow the picture: turned, mirrored, moved, brightened. */
class ShapePropertiesTest {
  private static final int SIDE = 81;

  private static StarCanvas star(double x, double y, double flux, StarCanvas.Kernel kernel) {
    return new StarCanvas(SIDE, SIDE).gaussianStar(x, y, flux, 1.0, kernel);
  }

  private static Star only(PixelPlane plane) {
    return TestFrames.measure(plane, StarCanvas.Exposure.noisy(3, 1), 1e9).stars().get(0);
  }

  private static StarCanvas.Kernel kernel(double length, double angle) {
    return length < 1 ? StarCanvas.point() : StarCanvas.line(length, angle);
  }

  private static PixelPlane exposed(StarCanvas canvas, long seed) {
    return canvas.exposed(StarCanvas.Exposure.noisy(3, seed));
  }

  /** A plane whose pixel (x, y) is pixel (y, side − 1 − x) of the old one. */
  private static PixelPlane turned(PixelPlane plane) {
    float[] samples = new float[SIDE * SIDE];
    for (int y = 0; y < SIDE; y++) {
      for (int x = 0; x < SIDE; x++) {
        samples[y * SIDE + x] = plane.at(y, SIDE - 1 - x);
      }
    }
    return PixelPlane.full(SIDE, SIDE, samples);
  }

  private static PixelPlane mirrored(PixelPlane plane) {
    float[] samples = new float[SIDE * SIDE];
    for (int y = 0; y < SIDE; y++) {
      for (int x = 0; x < SIDE; x++) {
        samples[y * SIDE + x] = plane.at(SIDE - 1 - x, y);
      }
    }
    return PixelPlane.full(SIDE, SIDE, samples);
  }

  private static void assertMoments(Moments expected, Moments actual) {
    double tolerance = 0.004 * expected.majorPx2();
    assertEquals(expected.xxPx2(), actual.xxPx2(), tolerance);
    assertEquals(expected.xyPx2(), actual.xyPx2(), tolerance);
    assertEquals(expected.yyPx2(), actual.yyPx2(), tolerance);
  }

  @Property(tries = 40)
  void aQuarterTurnOfThePictureTurnsTheShape(
      @ForAll @DoubleRange(min = 0, max = 12) double length,
      @ForAll @DoubleRange(min = 0, max = 3.1) double angle,
      @ForAll @IntRange(max = 1000) int seed) {
    PixelPlane plane = exposed(star(40.2, 39.7, 20_000, kernel(length, angle)), seed);
    Star before = only(plane);
    Star after = only(turned(plane));
    Moments moments = before.moments();
    assertMoments(new Moments(moments.yyPx2(), -moments.xyPx2(), moments.xxPx2()), after.moments());
    assertEquals(SIDE - 1 - before.yPx(), after.xPx(), 0.003);
    assertEquals(before.xPx(), after.yPx(), 0.003);
    assertEquals(-before.skewYPx(), after.skewXPx(), 0.01);
    assertEquals(before.fwhmMajorPx(), after.fwhmMajorPx(), 0.01 * before.fwhmMajorPx());
  }

  @Property(tries = 40)
  void aMirroredPictureMirrorsTheShape(
      @ForAll @DoubleRange(min = 0, max = 12) double length,
      @ForAll @DoubleRange(min = 0, max = 3.1) double angle,
      @ForAll @IntRange(max = 1000) int seed) {
    PixelPlane plane = exposed(star(40.2, 39.7, 20_000, kernel(length, angle)), seed);
    Moments moments = only(plane).moments();
    assertMoments(
        new Moments(moments.xxPx2(), -moments.xyPx2(), moments.yyPx2()),
        only(mirrored(plane)).moments());
  }

  @Property(tries = 40)
  void brighterStarsHaveTheSameShape(
      @ForAll @DoubleRange(min = 0.1, max = 10) double factor,
      @ForAll @DoubleRange(min = 0, max = 10) double length,
      @ForAll @DoubleRange(min = 0, max = 3.1) double angle) {
    StarCanvas.Exposure quiet = StarCanvas.Exposure.noisy(0.3, 2);
    StarCanvas.Kernel kernel = kernel(length, angle);
    PixelPlane dim = star(40.2, 39.7, 20_000, kernel).exposed(quiet);
    PixelPlane bright = star(40.2, 39.7, 20_000 * factor, kernel).exposed(quiet);
    assertMoments(only(dim).moments(), only(bright).moments());
    double ratio = only(bright).fluxCounts() / only(dim).fluxCounts();
    assertEquals(factor, ratio, 0.01 * factor);
  }

  @Property(tries = 40)
  void aStarKeepsItsShapeWhereverItFallsOnThePixels(
      @ForAll @DoubleRange(min = -0.5, max = 0.5) double dx,
      @ForAll @DoubleRange(min = -0.5, max = 0.5) double dy,
      @ForAll @DoubleRange(min = 0, max = 10) double length) {
    StarCanvas.Exposure quiet = StarCanvas.Exposure.noisy(0.3, 2);
    StarCanvas.Kernel kernel = kernel(length, 0.5);
    Star middle = only(star(40, 40, 20_000, kernel).exposed(quiet));
    Star moved = only(star(40 + dx, 40 + dy, 20_000, kernel).exposed(quiet));
    assertMoments(middle.moments(), moved.moments());
    assertEquals(40 + dx, moved.xPx(), 0.004);
    assertEquals(40 + dy, moved.yPx(), 0.004);
  }
}
