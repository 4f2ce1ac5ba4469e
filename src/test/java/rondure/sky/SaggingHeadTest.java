package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Orientation;

/** Heads that sag all night, drawn with the tests' own projector, and motions that are none. */
class SaggingHeadTest {
  private static final double FOCAL_PX = 50 / 0.006;

  private static TripodNight night(long seed, TripodNight.Motion motion) {
    TripodNight night = new TripodNight(seed);
    night.sky.focalPx = FOCAL_PX;
    night.sky.frames = 40;
    night.sky.intervalSeconds = 45;
    night.sky.poleOffAxisDeg = 60;
    night.sky.polePositionDeg = 30;
    night.motion = motion;
    return night;
  }

  private static List<Double> pxPerMin(SceneSky sky) {
    assertEquals(SceneSky.Finding.SKY_TURNS, sky.finding());
    return sky.frames().stream().map(f -> 60 * FOCAL_PX * f.creep().rateRadPerS()).toList();
  }

  /** 0.6 px a minute are 1.6 % of the sky's 36.5 px a minute (15.041″/s). */
  @ParameterizedTest
  @CsvSource({"1, 0.6", "2, 0.6", "3, 1.2"})
  void aSlowDroopAllNightIsToldInItsSize(long seed, double rate) {
    TripodNight night = night(seed, t -> new double[] {rate / 60 / FOCAL_PX * t, 0, 0});
    SceneSky sky = Registration.of(night.shots());
    for (double told : pxPerMin(sky)) {
      assertEquals(rate, told, 0.1 * rate);
    }
    assertEquals(
        0,
        sky.frames().get(5).skySpin().orElseThrow().minus(night.trueSpin(5)).rateRadPerS()
            / SkyMotion.SIDEREAL_RATE_RAD_PER_S,
        0.003);
  }

  /** Down to 5 px, ever more slowly: no part of it lasts. */
  @ParameterizedTest
  @CsvSource({"1, 0", "2, 1.5707963", "3, 0.8"})
  void aHeadThatSettlesIsNoDroopAllNight(long seed, double direction) {
    double px = 1 / FOCAL_PX;
    TripodNight night =
        night(
            seed,
            t -> {
              double turn = 2 * px * (1 - Math.exp(-(t + 900) / 900));
              return new double[] {Math.sin(direction) * turn, Math.cos(direction) * turn, 0};
            });
    long told = pxPerMin(Registration.of(night.shots())).stream().filter(v -> v > 0.25).count();
    assertTrue(told < 10, told + " frames");
  }

  @Test
  void aHeadSagsAboutALevelAxisAndDown() {
    Vec down = new Vec(1e-6, 0.3e-6, 0);
    assertTrue(HeadSag.fits(down, 0, Orientation.NORMAL));
    assertFalse(HeadSag.fits(down.times(-1), 0, Orientation.NORMAL));
    assertFalse(HeadSag.fits(new Vec(0, 1e-6, 0), 0, Orientation.NORMAL));
    assertFalse(HeadSag.fits(new Vec(1e-6, 0, 0.5e-6), 0, Orientation.NORMAL));
    assertTrue(HeadSag.fits(new Vec(1e-6, 0, 0.5e-6), 0.3e-6, Orientation.NORMAL));
    assertTrue(HeadSag.fits(down.times(-1), 0, Orientation.ROTATED_180));
  }

  /** Turned clockwise by a quarter to be shown, the sensor's right side is below. */
  @Test
  void downIsAsTheCameraWasHeld() {
    // The stars go to the sensor's left.
    Vec aimToTheRight = new Vec(0, -1e-6, 0);
    assertTrue(HeadSag.fits(aimToTheRight, 0, Orientation.ROTATED_90_CW));
    assertFalse(HeadSag.fits(aimToTheRight.times(-1), 0, Orientation.ROTATED_90_CW));
    assertFalse(HeadSag.fits(aimToTheRight, 0, Orientation.ROTATED_270_CW));
  }
}
