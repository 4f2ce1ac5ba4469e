package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;

class TrailTest {
  private static final Spin NORTH_ON_AXIS = Spin.ofSky(new Direction(0, 0, 1));

  private static Camera camera(double focalMm) {
    return new Camera(Projection.RECTILINEAR, focalMm * 1000 / 6, 0, 0, 0);
  }

  /** Moments of many points at even times along the path: the obvious, slow twin. */
  private static Moments bruteForce(Camera camera, Spin spin, ImagePoint at, double seconds) {
    int count = 20000;
    double x = 0;
    double y = 0;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int i = 0; i < count; i++) {
      double when = ((i + 0.5) / count - 0.5) * seconds;
      ImagePoint point = Trail.positionAfter(camera, spin, at, when).orElseThrow();
      double dx = point.xPx() - at.xPx();
      double dy = point.yPx() - at.yPx();
      x += dx / count;
      y += dy / count;
      xx += dx * dx / count;
      xy += dx * dy / count;
      yy += dy * dy / count;
    }
    return new Moments(xx - x * x, xy - x * y, yy - y * y);
  }

  /** Straight up to 270 s, integrated beyond: good to 0.1 % of the trail everywhere. */
  @ParameterizedTest
  @CsvSource({
    "14, 0, 45, 20",
    "14, 180, 20, 20",
    "14, 180, 20, 120",
    "14, 90, 30, 270",
    "24, 0, 45, 270",
    "14, 180, 20, 300",
    "24, 0, 45, 600",
    "24, 90, 30, 1800",
    "50, 200, 50, 3600"
  })
  void momentsAreThoseOfManyPointsAlongThePath(
      double focalMm, double azimuth, double altitude, double seconds) {
    Camera camera = camera(focalMm).with(focalMm * 1000 / 6, focalMm > 14 ? -0.03 : 0.01);
    Spin spin = Spin.ofSky(new Aim(45, azimuth, altitude).northPole());
    for (double x = -3000; x <= 3000; x += 1500) {
      for (double y = -2000; y <= 2000; y += 1000) {
        ImagePoint at = new ImagePoint(x, y);
        Moments slow = bruteForce(camera, spin, at, seconds);
        Moments fast = Trail.moments(camera, spin, at, seconds).orElseThrow();
        double tolerance = 1e-3 * slow.majorPx2() + 1e-9;
        assertEquals(slow.xxPx2(), fast.xxPx2(), tolerance);
        assertEquals(slow.xyPx2(), fast.xyPx2(), tolerance);
        assertEquals(slow.yyPx2(), fast.yyPx2(), tolerance);
      }
    }
  }

  /**
   * An arc of radius r and angle α about its middle: along r² (1/2 - sin α / 2α), across r² (1/2 +
   * sin α / 2α - (sin(α/2) / (α/2))²), by integration of cos and sin.
   */
  @ParameterizedTest
  @CsvSource({"600", "7200", "40000"})
  void anArcAboutThePoleHasTheMomentsOfACircle(double seconds) {
    double r = 2000;
    double angle = SkyMotion.SIDEREAL_RATE_RAD_PER_S * seconds;
    double half = angle / 2;
    double along = r * r * (0.5 - Math.sin(angle) / (2 * angle));
    double mean = Math.sin(half) / half;
    double across = r * r * (0.5 + Math.sin(angle) / (2 * angle) - mean * mean);
    Moments arc =
        Trail.moments(camera(24), NORTH_ON_AXIS, new ImagePoint(r, 0), seconds).orElseThrow();
    assertEquals(along, arc.yyPx2(), 1e-9 * along);
    assertEquals(across, arc.xxPx2(), 1e-9 * along);
    assertEquals(0, arc.xyPx2(), 1e-9 * along);
  }

  /** A steady sag adds as a velocity: 6 px and 2 px along one line give 8² / 12, not 3.333. */
  @Test
  void sagAddsToTheSkyAsAVelocity() {
    Camera camera = camera(24);
    ImagePoint centre = new ImagePoint(0, 0);
    Spin sky = new Spin(0, 6 / (camera.focalLengthPx() * 20), 0);
    Spin sag = sky.times(1 / 3.0);
    assertEquals(3, Trail.moments(camera, sky, centre, 20).orElseThrow().xxPx2(), 1e-9);
    Moments both = Trail.moments(camera, sky.plus(sag), centre, 20).orElseThrow();
    assertEquals(5.333, both.xxPx2(), 0.001);
  }

  /** Chords of the astropy WCS library (TAN, CRVAL1 moved by ω T) begin at the pixel given. */
  @Test
  void theChordAboutTheMiddleIsTheExactOne() {
    Spin spin = Spin.ofSky(new Aim(45, 180, 45).northPole());
    ImagePoint begin = new ImagePoint(3000, 2000);
    ImagePoint middle = Trail.positionAfter(camera(24), spin, begin, 10).orElseThrow();
    ImagePoint end = Trail.positionAfter(camera(24), spin, middle, 10).orElseThrow();
    assertEquals(9.38475, begin.distanceTo(end), 2e-5);
  }

  /** The celestial equator through the middle: L² / 12 of 5.8337 px. */
  @Test
  void theLineAtTheEquatorHasATwelfthOfItsLengthSquared() {
    Spin spin = Spin.ofSky(new Aim(45, 180, 45).northPole());
    Moments line = Trail.moments(camera(24), spin, new ImagePoint(0, 0), 20).orElseThrow();
    assertEquals(5.8337 * 5.8337 / 12, line.xxPx2(), 0.0005);
    assertEquals(0, line.yyPx2(), 1e-12);
  }

  /** The site's hemisphere does not matter: a southern pole on the axis turns the other way. */
  @Test
  void aboutTheSouthernPoleArcsAreTheSame() {
    Spin south = Spin.ofSky(new Direction(0, 0, -1));
    ImagePoint at = new ImagePoint(1200, -700);
    Moments northern = Trail.moments(camera(24), NORTH_ON_AXIS, at, 900).orElseThrow();
    Moments southern = Trail.moments(camera(24), south, at, 900).orElseThrow();
    assertEquals(0, northern.minus(southern).spin2Px2(), 1e-9);
  }

  @Test
  void aStarThatLeavesTheViewHasNoMoments() {
    Spin fast = new Spin(0, 0.05, 0);
    ImagePoint edge = new ImagePoint(3000, 0);
    assertEquals(Optional.empty(), Trail.moments(camera(24), fast, edge, 60));
    assertThrows(
        IllegalArgumentException.class, () -> Trail.moments(camera(24), fast, edge, Double.NaN));
  }
}
