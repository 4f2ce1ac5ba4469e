package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SkyMotionTest {
  private static final double PITCH_MICRONS = 6;

  private static Camera camera(double focalMm) {
    return new Camera(Projection.RECTILINEAR, focalMm * 1000 / PITCH_MICRONS, 0, 0, 0);
  }

  /** Sidereal day: IERS / Aoki et al. 1982; rate cross-checked with the IAU ERA routine. */
  @Test
  void theSkyTurnsFifteenArcsecondsASecond() {
    assertEquals(7.2921159e-5, SkyMotion.SIDEREAL_RATE_RAD_PER_S, 5e-13);
    assertEquals(15.0410686, SkyMotion.SIDEREAL_RATE_ARCSEC_PER_S, 2e-6);
    double stellarDayRate = 360 * 3600 / 86164.09890;
    assertEquals(stellarDayRate, SkyMotion.SIDEREAL_RATE_ARCSEC_PER_S, 2e-6);
  }

  /**
   * T = 20 s, p = 6 µm, 45° north. Values of the gnomonic image flow computed independently of this
   * code; the end points below agree with the astropy WCS library (TAN projection, CRVAL1 moved by
   * ω T).
   */
  @ParameterizedTest
  @CsvSource({
    "24, 180, 45, 0, 0, 5.8337, 0, 0.001, 0.01",
    "24, 180, 45, 3000, 0, 9.1151, 0, 0.001, 0.01",
    "24, 180, 45, 3000, 2000, 9.3740, 13.496, 0.001, 0.01",
    "24, 0, 45, 3000, 2000, 5.2584, -56.310, 0.001, 0.01",
    "14, 180, 20, 3000, 2000, 8.7086, 37.057, 0.002, 0.01",
    "24, 90, 30, 0, 0, 5.4569, -49.107, 0.002, 0.01"
  })
  void trailsFollowTheGnomonicFlow(
      double focalMm,
      double azimuth,
      double altitude,
      double x,
      double y,
      double lengthPx,
      double directionDeg,
      double lengthTolerance,
      double directionTolerance) {
    Direction pole = new Aim(45, azimuth, altitude).northPole();
    Camera camera = camera(focalMm);
    assertEquals(
        lengthPx, SkyMotion.trailPx(camera, pole, new ImagePoint(x, y), 20), lengthTolerance);
    assertEquals(
        directionDeg,
        Math.toDegrees(SkyMotion.velocity(camera, pole, x, y).directionRad()),
        directionTolerance);
  }

  /** Chords from the astropy WCS library, TAN projection, CRVAL1 moved by ω T, T = 20 s. */
  @ParameterizedTest
  @CsvSource({
    "24, 45, 3000, 0, 9.12513",
    "24, 45, 3000, 2000, 9.38475",
    "14, 20, 3000, 2000, 8.72311"
  })
  void exactEndPointsAgreeWithAnIndependentProjection(
      double focalMm, double altitude, double x, double y, double chordPx) {
    Direction pole = new Aim(45, 180, altitude).northPole();
    ImagePoint start = new ImagePoint(x, y);
    ImagePoint end = SkyMotion.positionAfter(camera(focalMm), pole, start, 20).orElseThrow();
    assertEquals(chordPx, start.distanceTo(end), 2e-5);
    assertEquals(chordPx, SkyMotion.trailPx(camera(focalMm), pole, start, 20), 0.002 * chordPx);
  }

  @Test
  void offAxisOnTheEquatorTheTrailGrowsByOnePlusXSquared() {
    Direction pole = new Aim(45, 180, 45).northPole();
    double centre = SkyMotion.trailPx(camera(24), pole, new ImagePoint(0, 0), 20);
    double side = SkyMotion.trailPx(camera(24), pole, new ImagePoint(3000, 0), 20);
    assertEquals(1.5625, side / centre, 1e-9);
  }

  @Test
  void theSmallFieldFormulaIsShortByThreeTimesInAWideCorner() {
    Direction pole = new Aim(45, 180, 20).northPole();
    Camera camera = camera(14);
    double declination = SkyMotion.declinationDeg(camera, pole, 3000, 2000);
    double small = SkyMotion.smallFieldTrailPx(camera.focalLengthPx(), declination, 20);
    assertEquals(2.5812, small, 0.002);
    double exact = SkyMotion.trailPx(camera, pole, new ImagePoint(3000, 2000), 20);
    assertEquals(3.374, exact / small, 0.002);
  }

  /** sin δ = sin φ sin h + cos φ cos h cos A (spherical trigonometry of any textbook). */
  @Test
  void declinationFollowsFromTheAim() {
    Direction pole = new Aim(45, 90, 30).northPole();
    assertEquals(20.705, SkyMotion.declinationDeg(camera(24), pole, 0, 0), 0.001);
  }

  /**
   * Local stretch of the gnomonic projection: sec² of the field angle (Snyder 1987, USGS PP 1395).
   */
  @ParameterizedTest
  @CsvSource({"14, 3.3878", "24, 1.8125", "50, 1.1872"})
  void theLargestTrailInACornerIsSecantSquaredTimesTheCentre(double focalMm, double ratio) {
    Camera camera = camera(focalMm);
    double corner = SkyMotion.largestTrailPx(camera, 3000, 2000, 20);
    double centre = SkyMotion.largestTrailPx(camera, 0, 0, 20);
    assertEquals(ratio, corner / centre, 1e-4);
  }

  @Test
  void trailsBendByLessThanHalfAPixelInTenMinutes() {
    Direction pole = new Direction(0, 0, 1);
    ImagePoint start = new ImagePoint(2000, 0);
    assertEquals(0.0012, sagitta(pole, start, 30), 0.0001);
    assertEquals(0.479, sagitta(pole, start, 600), 0.001);
  }

  private static double sagitta(Direction pole, ImagePoint start, double seconds) {
    Camera camera = camera(24);
    ImagePoint middle = SkyMotion.positionAfter(camera, pole, start, seconds / 2).orElseThrow();
    ImagePoint end = SkyMotion.positionAfter(camera, pole, start, seconds).orElseThrow();
    ImagePoint chord = new ImagePoint((start.xPx() + end.xPx()) / 2, (start.yPx() + end.yPx()) / 2);
    return middle.distanceTo(chord);
  }

  @Property
  void noPoleGivesALongerTrailThanTheLargest(
      @ForAll @DoubleRange(min = -90, max = 90) double latitude,
      @ForAll @DoubleRange(min = 0, max = 360) double azimuth,
      @ForAll @DoubleRange(min = -20, max = 90) double altitude,
      @ForAll @DoubleRange(min = -3000, max = 3000) double x,
      @ForAll @DoubleRange(min = -2000, max = 2000) double y) {
    Direction pole = new Aim(latitude, azimuth, altitude).northPole();
    Camera camera = camera(14);
    double trail = SkyMotion.trailPx(camera, pole, new ImagePoint(x, y), 10);
    assertTrue(trail <= SkyMotion.largestTrailPx(camera, x, y, 10) * (1 + 1e-12));
  }

  @Test
  void inTheNorthStarsToTheRightOfThePoleRise() {
    Direction pole = new Aim(45, 0, 45).northPole();
    assertTrue(SkyMotion.velocity(camera(24), pole, 500, 0).yPxPerS() < 0);
  }

  @Test
  void nonsenseIsRefusedByName() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Camera(Projection.RECTILINEAR, Double.NaN, 0, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> new Direction(1, 1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Aim(91, 0, 0));
  }
}
