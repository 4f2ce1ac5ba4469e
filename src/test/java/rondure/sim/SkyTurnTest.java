package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The simulated sky against published motion.
 *
 * <p>Speeds: rotational image flow of Longuet-Higgins &amp; Prazdny 1980, Proc. R. Soc. B 208, 385
 * (from memory), X' = a_y (1 + X²) - a_x X Y - a_z Y and its twin, worked out by hand for the sky's
 * 7.2921159e-5 rad/s; chords: astropy's TAN projection with the reference point moved by ωT.
 */
class SkyTurnTest {
  private static final double CENTRE_X = 3000;
  private static final double CENTRE_Y = 2000;

  private static NightPlan plan(double focalMm, double azimuth, double altitude) {
    return Plans.with(
        "camera.widthPx", "6001",
        "camera.heightPx", "4001",
        "lens.focalLengthMm", Double.toString(focalMm),
        "aim.azimuthDeg", Double.toString(azimuth),
        "aim.altitudeDeg", Double.toString(altitude));
  }

  /** Where the star that is at (x, y) from the centre at time 0 has gone, less where it was. */
  private static double[] displacement(NightPlan plan, double x, double y, double from, double to) {
    ImagePoint image = new ImagePoint(plan);
    double[] camera = SkyTurn.cameraFromGround(plan.aim());
    double latitude = plan.sky().latitudeDeg();
    double[] seen = image.direction(CENTRE_X + x, CENTRE_Y + y);
    double[] ground = Turn.apply(Turn.transposed(camera), seen);
    double[] star = Turn.apply(Turn.transposed(SkyTurn.groundFromEquatorial(latitude, 0)), ground);
    double[] start = new double[2];
    double[] end = new double[2];
    image.of(Turn.times(camera, SkyTurn.groundFromEquatorial(latitude, from)), star, start);
    image.of(Turn.times(camera, SkyTurn.groundFromEquatorial(latitude, to)), star, end);
    return new double[] {end[0] - start[0], end[1] - start[1]};
  }

  @ParameterizedTest(name = "{0} mm, azimuth {1}, altitude {2}, at ({3}, {4})")
  @CsvSource({
    "24, 180, 45,    0,    0, 5.8337,   0.000, 0.001",
    "24, 180, 45, 3000,    0, 9.1151,   0.000, 0.001",
    "24, 180, 45, 3000, 2000, 9.3740,  13.496, 0.001",
    "24,   0, 45, 3000, 2000, 5.2584, -56.310, 0.001",
    "14, 180, 20, 3000, 2000, 8.7086,  37.057, 0.002",
    "24,  90, 30,    0,    0, 5.4569, -49.107, 0.002",
  })
  void trailOfTwentySecondsFollowsTheImageFlow(
      double focalMm,
      double azimuth,
      double altitude,
      double x,
      double y,
      double lengthPx,
      double directionDeg,
      double tolerance) {
    double[] second = displacement(plan(focalMm, azimuth, altitude), x, y, -0.5, 0.5);
    assertEquals(lengthPx, 20 * Math.hypot(second[0], second[1]), tolerance);
    assertEquals(directionDeg, Math.toDegrees(Math.atan2(second[1], second[0])), 0.01);
  }

  @ParameterizedTest(name = "{0} mm, altitude {1}, at ({2}, {3})")
  @CsvSource({
    "24, 45, 3000,    0, 9.12513",
    "24, 45, 3000, 2000, 9.38475",
    "14, 20, 3000, 2000, 8.72311",
  })
  void chordOfTwentySecondsMatchesAstropy(
      double focalMm, double altitude, double x, double y, double chordPx) {
    double[] moved = displacement(plan(focalMm, 180, altitude), x, y, 0, 20);
    assertEquals(chordPx, Math.hypot(moved[0], moved[1]), 2e-4);
  }

  /** Spherical astronomy: the pole stands at the latitude, due north. */
  @Test
  void poleStandsAtTheLatitude() {
    double[] pole = Turn.apply(SkyTurn.groundFromEquatorial(52, 12345), new double[] {0, 0, 1});
    double[] expected = SkyTurn.ground(0, 52);
    for (int i = 0; i < 3; i++) {
      assertEquals(expected[i], pole[i], 1e-12);
    }
  }

  /** Spherical astronomy: on the meridian a star stands at 90° - latitude + declination. */
  @Test
  void starOnTheMeridianCulminates() {
    double[] star = SkyTurn.equatorial(0, Math.toRadians(-10));
    double[] ground = Turn.apply(SkyTurn.groundFromEquatorial(45, 0), star);
    assertEquals(35, SkyLight.altitudeDeg(ground), 1e-9);
    assertEquals(180, Math.abs(Math.toDegrees(Math.atan2(ground[0], ground[1]))), 1e-9);
  }

  /** Six sidereal hours after culmination an equatorial star sets due west. */
  @Test
  void equatorialStarSetsDueWest() {
    double[] star = SkyTurn.equatorial(0, 0);
    double[] ground =
        Turn.apply(SkyTurn.groundFromEquatorial(45, SkyTurn.SIDEREAL_DAY_SECONDS / 4), star);
    assertEquals(-1, ground[0], 1e-9);
    assertEquals(0, ground[2], 1e-9);
  }

  /** Mean sidereal rate 15.0410686 arcsec/s (IERS Conventions, mean sidereal day). */
  @Test
  void skyTurnsAtTheSiderealRate() {
    assertEquals(15.0410686, 360 * 3600 / SkyTurn.SIDEREAL_DAY_SECONDS, 2e-6);
  }

  @Test
  void distortionIsUndoneBySearch() {
    NightPlan plan = Plans.with("lens.distortionK1", "-0.08", "lens.focalLengthMm", "1.2");
    ImagePoint image = new ImagePoint(plan);
    double[] point = new double[2];
    image.of(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1}, image.direction(3, 150), point);
    assertEquals(3, point[0], 1e-6);
    assertEquals(150, point[1], 1e-6);
  }
}
