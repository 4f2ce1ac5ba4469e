package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;

/** Small rotations of the camera, M = (f/p)² B S Bᵀ. */
class CameraShakeTest {
  private static final double ARCSEC = Math.PI / 648000;

  private static Camera camera(double focalMm, double pitchMicrons) {
    return new Camera(Projection.RECTILINEAR, focalMm * 1000 / pitchMicrons, 0, 0, 0);
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
    RotationCovariance roll = RotationCovariance.diagonal(0, 0, 100 * ARCSEC * ARCSEC);
    Moments corner = camera(24, 6).jacobian(3000, 2000).blur(roll);
    assertEquals(0.1748, Math.sqrt(corner.majorPx2()), 1e-4);
    assertEquals(0.0306, corner.majorPx2(), 1e-4);
    assertEquals(0, corner.minorPx2(), 1e-12);
    double across = Math.atan2(2000, 3000) + Math.PI / 2;
    assertEquals(across, corner.positionAngleRad(), 1e-9);
    assertEquals(0, camera(24, 6).jacobian(0, 0).blur(roll).majorPx2(), 1e-15);
  }

  /**
   * Pitch and yaw of equal size: I + (2 ρ² + ρ⁴) r̂ r̂ᵀ, exactly (derived for a rectilinear field;
   * the radial scale is f sec² θ, and sec⁴ θ = 1 + 2 ρ² + ρ⁴).
   */
  @Property(tries = 300)
  void roundPitchAndYawGrowRadiallyByTwoRhoSquaredPlusRhoToTheFourth(
      @ForAll @DoubleRange(min = -3000, max = 3000) double x,
      @ForAll @DoubleRange(min = -2000, max = 2000) double y) {
    double variance = 1.0 / (4000 * 4000);
    RotationCovariance shake = RotationCovariance.diagonal(variance, variance, 0);
    Moments blur = camera(24, 6).jacobian(x, y).blur(shake);
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
    Moments shake = camera.jacobian(700, 3500).blur(RotationCovariance.ofSpin(spin, 20));
    Moments trail = Trail.moments(camera, spin, new ImagePoint(700, 3500), 20).orElseThrow();
    assertEquals(trail.xxPx2(), shake.xxPx2(), 1e-12);
    assertEquals(trail.xyPx2(), shake.xyPx2(), 1e-12);
    assertEquals(trail.yyPx2(), shake.yyPx2(), 1e-12);
  }

  /** Covariances of independent shakes add, and so do their blurs; scale goes through. */
  @Test
  void blurIsLinearInTheCovariance() {
    FlowJacobian matrix = camera(14, 6).jacobian(2500, -1800);
    RotationCovariance one = new RotationCovariance(3e-8, 1e-8, -5e-9, 2e-8, 4e-9, 6e-8);
    RotationCovariance other = RotationCovariance.diagonal(1e-8, 5e-8, 2e-8);
    Moments together = matrix.blur(one.plus(other.times(0.5)));
    Moments apart = matrix.blur(one).plus(matrix.blur(other).times(0.5));
    assertEquals(0, together.minus(apart).majorPx2(), 1e-9);
  }
}
