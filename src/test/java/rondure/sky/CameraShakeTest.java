package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;

/** Small rotations of the camera, M = (f/p)² B S Bᵀ, summed up over the axes of a diagonal S. */
class CameraShakeTest {
  private static final double ARCSEC = Math.PI / 648000;

  private static Camera camera(double focalMm, double pitchMicrons) {
    return new Camera(Projection.RECTILINEAR, focalMm * 1000 / pitchMicrons, 0, 0, 0);
  }

  /** What independent rotations of these standard errors blur at a place. */
  private static Moments blur(Camera camera, double x, double y, Spin sigmas) {
    double[] by = {sigmas.xRadPerS(), sigmas.yRadPerS(), sigmas.zRadPerS()};
    Moments sum = new Moments(0, 0, 0);
    for (int axis = 0; axis < 3; axis++) {
      Spin one = new Spin(axis == 0 ? by[0] : 0, axis == 1 ? by[1] : 0, axis == 2 ? by[2] : 0);
      ImageVelocity v = camera.flow(one, x, y);
      sum =
          sum.plus(
              new Moments(
                  v.xPxPerS() * v.xPxPerS(), v.xPxPerS() * v.yPxPerS(), v.yPxPerS() * v.yPxPerS()));
    }
    return sum;
  }

  /** f/p · 1″ (closed form, computed independently). */
  @ParameterizedTest
  @CsvSource({"24, 6, 0.0194", "135, 6, 0.1091", "200, 4.3, 0.2255"})
  void oneArcsecondOfPitchMovesTheCentreByFocalLengthOverPixel(
      double focalMm, double pitchMicrons, double px) {
    Spin pitch = new Spin(ARCSEC, 0, 0);
    assertEquals(px, camera(focalMm, pitchMicrons).flow(pitch, 0, 0).speedPxPerS(), 1e-4);
  }

  /** Roll moves along circles by r times the angle: 10″ at r = 3606 px (closed form). */
  @Test
  void tenArcsecondsOfRollAreSeenInTheCornersOnly() {
    Spin roll = new Spin(0, 0, 10 * ARCSEC);
    Moments corner = blur(camera(24, 6), 3000, 2000, roll);
    assertEquals(0.1748, Math.sqrt(corner.majorPx2()), 1e-4);
    assertEquals(0.0306, corner.majorPx2(), 1e-4);
    assertEquals(0, corner.minorPx2(), 1e-12);
    double across = Math.atan2(2000, 3000) + Math.PI / 2;
    assertEquals(across, corner.positionAngleRad(), 1e-9);
    assertEquals(0, blur(camera(24, 6), 0, 0, roll).majorPx2(), 1e-15);
  }

  /**
   * Pitch and yaw of equal size: I + (2 ρ² + ρ⁴) r̂ r̂ᵀ, exactly (derived for a rectilinear field;
   * the radial scale is f sec² θ, and sec⁴ θ = 1 + 2 ρ² + ρ⁴).
   */
  @Property(tries = 300)
  void roundPitchAndYawGrowRadiallyByTwoRhoSquaredPlusRhoToTheFourth(
      @ForAll @DoubleRange(min = -3000, max = 3000) double x,
      @ForAll @DoubleRange(min = -2000, max = 2000) double y) {
    Moments blur = blur(camera(24, 6), x, y, new Spin(1 / 4000.0, 1 / 4000.0, 0));
    double rho2 = (x * x + y * y) / (4000.0 * 4000);
    double growth = (2 * rho2 + rho2 * rho2) / Math.max(1e-300, x * x + y * y);
    assertEquals(1 + growth * x * x, blur.xxPx2(), 1e-10);
    assertEquals(growth * x * y, blur.xyPx2(), 1e-10);
    assertEquals(1 + growth * y * y, blur.yyPx2(), 1e-10);
  }

  /** A trail is a rotation of rank one: S = n nᵀ ω² T² / 12. */
  @Test
  void aTrailIsAShakeOfRankOne() {
    Camera camera = new Camera(Projection.EQUISOLID, 2500, -0.02, 3000, 2000);
    Spin spin = Spin.ofSky(new Aim(45, 120, 35).northPole());
    ImageVelocity v = camera.flow(spin.times(20 / Math.sqrt(12)), 700, 3500);
    Moments trail = Trail.moments(camera, spin, new ImagePoint(700, 3500), 20).orElseThrow();
    assertEquals(trail.xxPx2(), v.xPxPerS() * v.xPxPerS(), 1e-12);
    assertEquals(trail.xyPx2(), v.xPxPerS() * v.yPxPerS(), 1e-12);
    assertEquals(trail.yyPx2(), v.yPxPerS() * v.yPxPerS(), 1e-12);
  }
}
