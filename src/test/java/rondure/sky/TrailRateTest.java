package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrailRateTest {

  /**
   * 24 mm, 6 µm, 20 s: 5.8337 px on the celestial equator and 5.4569 px at declination 20.705°, the
   * middle of frames whose pole is elsewhere; both from the exact rotation of the sky, worked out
   * apart from this program (vector rotation; the first also with the TAN projection of FITS WCS).
   */
  @ParameterizedTest
  @CsvSource({"0, 5.8337", "20.705, 5.4569", "-20.705, 5.4569"})
  void theTrailIsThatOfTheExactRotationInTheMiddle(double declination, double px) {
    assertEquals(px, TrailRate.of(24, 6, declination).trailPx(20), 0.001);
  }

  /** cos 60° = 1/2: the same trail takes twice as long as on the equator. */
  @Test
  void atSixtyDegreesTheSameTrailTakesTwiceAsLong() {
    double equator = TrailRate.of(24, 6, 0).secondsFor(2).orElseThrow();
    assertEquals(2 * 20 / 5.8337, equator, 0.002);
    assertEquals(2 * equator, TrailRate.of(24, 6, -60).secondsFor(2).orElseThrow(), 1e-9);
  }

  /**
   * Brute force over all ways to turn the camera, with the exact flow of {@link SkyMotion}. On the
   * equator the longest is 1 + X² (24 mm, 6 µm, 3000 px off: 1.5625), at the pole X.
   */
  @ParameterizedTest
  @CsvSource({"0, 0.75", "-30, 0.5", "60, 0.75", "75, 0.3", "85, 1.2", "90, 0.75"})
  void theLongestTrailOffTheAxisIsThatOfTheWorstTurn(double declinationDeg, double tangent) {
    double focalPx = 4000;
    Camera camera = new Camera(Projection.RECTILINEAR, focalPx, 0, 0, 0);
    double delta = Math.toRadians(declinationDeg);
    double longest = 0;
    for (int tenths = 0; tenths < 3600; tenths++) {
      double turn = Math.toRadians(tenths / 10.0);
      Direction pole =
          Direction.of(
              Math.cos(delta) * Math.sin(turn), -Math.cos(delta) * Math.cos(turn), Math.sin(delta));
      ImagePoint place = new ImagePoint(tangent * focalPx, 0);
      longest = Math.max(longest, SkyMotion.trailPx(camera, pole, place, 1));
    }
    double equator = new TrailRate(focalPx, 0).trailPx(1);
    TrailRate rate = new TrailRate(focalPx, declinationDeg);
    assertEquals(longest / equator, rate.longestTimesEquator(tangent), 2e-5);
    assertEquals(1.5625, new TrailRate(focalPx, 0).longestTimesEquator(0.75), 1e-9);
    assertEquals(0.75, new TrailRate(focalPx, 90).longestTimesEquator(0.75), 1e-9);
  }

  @Test
  void noExposureTrailsInTheMiddleAtThePole() {
    assertEquals(Optional.empty(), TrailRate.of(24, 6, 90).secondsFor(2));
    assertEquals(0, TrailRate.of(24, 6, -90).trailPx(20), 1e-12);
  }

  /** 2 px take 6.86 s: 4 s and a stop less, then on by doubling as the dials name them. */
  @Test
  void exposuresAreThoseOfTheDials() {
    assertArrayEquals(
        new double[] {2, 4, 8, 15, 30, 60}, TrailRate.of(24, 6, 45).customarySeconds(2, 6), 1e-12);
    assertArrayEquals(
        new double[] {0.125, 0.25, 0.5}, TrailRate.of(400, 4, 0).customarySeconds(2, 3), 1e-12);
  }

  @Test
  void nonsenseIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new TrailRate(0, 0));
    assertThrows(IllegalArgumentException.class, () -> new TrailRate(4000, 91));
    assertThrows(IllegalArgumentException.class, () -> new TrailRate(4000, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new TrailRate(4000, 0).secondsFor(0));
  }
}
