package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CameraTest {
  private static final double F = 4000;

  private static Camera camera(Projection projection, double k1) {
    return new Camera(projection, F, k1, 2999.5, 1999.5);
  }

  /**
   * Radius over focal length at an angle off axis: tan θ, θ, 2 sin(θ/2), 2 tan(θ/2) (textbook
   * definitions; values computed with a pocket calculator's functions in degrees).
   */
  @ParameterizedTest
  @CsvSource({
    "RECTILINEAR, 45, 1.0000000000",
    "EQUIDISTANT, 45, 0.7853981634",
    "EQUISOLID, 60, 1.0000000000",
    "STEREOGRAPHIC, 90, 2.0000000000",
    "EQUIDISTANT, 110, 1.9198621772",
    "EQUISOLID, 110, 1.6383040886",
    "STEREOGRAPHIC, 110, 2.8562960135"
  })
  void eachProjectionHasItsTextbookRadius(Projection projection, double degrees, double radius) {
    double angle = Math.toRadians(degrees);
    Direction seen = new Direction(Math.sin(angle), 0, Math.cos(angle));
    ImagePoint image = camera(projection, 0).project(seen).orElseThrow();
    assertEquals(radius, (image.xPx() - 2999.5) / F, 1e-9);
    assertEquals(1999.5, image.yPx(), 1e-9);
  }

  /** The definition of k1: an ideal radius of 0.5 lands at 0.5 (1 + k1 / 4). */
  @Test
  void distortionMovesAnIdealPointByK1TimesItsCube() {
    Direction seen = Direction.of(0.5, 0, 1);
    ImagePoint pulled = camera(Projection.RECTILINEAR, -0.04).project(seen).orElseThrow();
    assertEquals(F * 0.5 * 0.99, pulled.xPx() - 2999.5, 1e-9);
  }

  @Property(tries = 2000)
  void everyPixelSeenIsWhereItsDirectionFalls(
      @ForAll Projection projection,
      @ForAll @DoubleRange(min = -0.06, max = 0.06) double k1,
      @ForAll @DoubleRange(min = 0, max = 5999) double x,
      @ForAll @DoubleRange(min = 0, max = 3999) double y) {
    Camera camera = camera(projection, k1);
    assertTrue(camera.sees(x, y));
    ImagePoint back = camera.project(camera.direction(x, y)).orElseThrow();
    assertEquals(x, back.xPx(), 1e-7);
    assertEquals(y, back.yPx(), 1e-7);
  }

  /** The slow twin: direction and projection of neighbouring instants, central difference. */
  @Property(tries = 2000)
  void theFlowIsTheDerivativeOfTurnedDirections(
      @ForAll Projection projection,
      @ForAll @DoubleRange(min = -0.06, max = 0.06) double k1,
      @ForAll @DoubleRange(min = 0, max = 5999) double x,
      @ForAll @DoubleRange(min = 0, max = 3999) double y,
      @ForAll @DoubleRange(min = -1, max = 1) double roll) {
    Camera camera = camera(projection, k1);
    Spin spin = new Spin(0.6, -0.4 + roll / 3, roll);
    double step = 1e-5;
    Direction now = camera.direction(x, y);
    ImagePoint after = camera.project(Rotation.of(spin, step).apply(now)).orElseThrow();
    ImagePoint before = camera.project(Rotation.of(spin, -step).apply(now)).orElseThrow();
    ImageVelocity flow = camera.flow(spin, x, y);
    assertEquals((after.xPx() - before.xPx()) / (2 * step), flow.xPxPerS(), 1e-3);
    assertEquals((after.yPx() - before.yPx()) / (2 * step), flow.yPxPerS(), 1e-3);
  }

  @Test
  void aFisheyeSeesBehindItselfAndARectilinearLensDoesNot() {
    Direction behind = Direction.of(1, 0, -0.3);
    assertEquals(Optional.empty(), camera(Projection.RECTILINEAR, 0).project(behind));
    Camera fisheye = new Camera(Projection.EQUIDISTANT, 1500, -0.01, 2999.5, 1999.5);
    ImagePoint image = fisheye.project(behind).orElseThrow();
    Direction back = fisheye.direction(image.xPx(), image.yPx());
    assertEquals(1, back.dot(behind), 1e-12);
    assertTrue(back.z() < 0);
    Spin spin = new Spin(0, 0, 1);
    assertEquals(
        image.xPx() - 2999.5, fisheye.flow(spin, image.xPx(), image.yPx()).yPxPerS(), 1e-9);
  }

  /** ρ (1 + k1 ρ²) is largest at ρ = 1 / √(-3 k1), where it is two thirds of that. */
  @Test
  void beyondWhereDistortionTurnsBackNothingIsSeen() {
    Camera camera = camera(Projection.RECTILINEAR, -0.1);
    double end = F * 2 / 3 / Math.sqrt(0.3);
    assertTrue(camera.sees(2999.5 + 0.999 * end, 1999.5));
    assertFalse(camera.sees(2999.5 + 1.001 * end, 1999.5));
    double beyond = 2999.5 + 1.001 * end;
    assertThrows(IllegalArgumentException.class, () -> camera.direction(beyond, 1999.5));
    assertThrows(IllegalArgumentException.class, () -> camera.jacobian(beyond, 1999.5));
    assertEquals(Optional.empty(), camera.project(Direction.of(2, 0, 1)));
    assertFalse(camera(Projection.EQUISOLID, 0).sees(2999.5 + 2.001 * F, 1999.5));
    assertFalse(camera(Projection.EQUIDISTANT, 0).sees(2999.5 + 3.2 * F, 1999.5));
  }

  /** The cubic by bisection, an obvious and slow twin. */
  @ParameterizedTest
  @CsvSource({"-0.3", "-0.03", "-1e-7", "-1e-13", "0", "1e-13", "1e-6", "0.03", "0.5", "20"})
  void distortionIsUndoneExactly(double k1) {
    double most = k1 < 0 ? 1 / Math.sqrt(-3 * k1) : 4;
    for (double share : new double[] {0, 1e-6, 0.1, 0.5, 0.9, 0.999}) {
      double q = share * most * (1 + k1 * share * share * most * most);
      if (q > 50) {
        continue;
      }
      double low = 0;
      double high = most;
      for (int i = 0; i < 200; i++) {
        double middle = (low + high) / 2;
        if (middle * (1 + k1 * middle * middle) < q) {
          low = middle;
        } else {
          high = middle;
        }
      }
      assertEquals(low, RadialDistortion.undone(k1, q), 1e-9 * Math.max(1, low), "q = " + q);
    }
  }

  /** Rotational image flow of Longuet-Higgins & Prazdny 1980, as printed for X, Y = x/f, y/f. */
  @Property(tries = 200)
  void withoutDistortionTheFlowIsThePublishedOne(
      @ForAll @DoubleRange(min = 0, max = 5999) double x,
      @ForAll @DoubleRange(min = 0, max = 3999) double y) {
    double aX = 0.3;
    double aY = -0.5;
    double aZ = 0.7;
    double tanX = (x - 2999.5) / F;
    double tanY = (y - 1999.5) / F;
    ImageVelocity flow = camera(Projection.RECTILINEAR, 0).flow(new Spin(aX, aY, aZ), x, y);
    assertEquals(F * (aY * (1 + tanX * tanX) - aX * tanX * tanY - aZ * tanY), flow.xPxPerS(), 1e-8);
    assertEquals(
        F * (-aX * (1 + tanY * tanY) + aY * tanX * tanY + aZ * tanX), flow.yPxPerS(), 1e-8);
  }

  /** The slow twin of B's largest singular value: many axes, none above, one nearly there. */
  @Property(tries = 100)
  void noRotationMovesAnImageFartherThanTheLargestScale(
      @ForAll Projection projection,
      @ForAll @DoubleRange(min = -0.06, max = 0.06) double k1,
      @ForAll @DoubleRange(min = 0, max = 5999) double x,
      @ForAll @DoubleRange(min = 0, max = 3999) double y) {
    Camera camera = camera(projection, k1);
    double largest = camera.stretch(x, y).largestPxPerRad();
    double most = 0;
    for (int i = 0; i < 2000; i++) {
      double z = (i + 0.5) / 1000 - 1;
      double turn = i * Math.PI * (3 - Math.sqrt(5));
      double across = Math.sqrt(1 - z * z);
      Spin axis = new Spin(across * Math.cos(turn), across * Math.sin(turn), z);
      most = Math.max(most, camera.flow(axis, x, y).speedPxPerS());
    }
    assertTrue(most <= largest * (1 + 1e-12), most + " above " + largest);
    assertTrue(most > 0.995 * largest, most + " far below " + largest);
  }
}
