package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rondure.sim.FrameTruth;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.testing.SimNight;
import rondure.testing.TruthFields;

/** Clocks that are wrong cost the clock, never the frames nor the trails. */
class WrongClocksTest {
  private static final int FRAMES = 8;
  private static List<SkyShot> shots;
  private static Spin truth;

  @BeforeAll
  static void draw() {
    NightPlan plan =
        SimNight.plan(
            "lens.focalLengthMm", "24",
            "stars.faintestMagnitude", "9.5",
            "stars.starsPerSquareDegree", "4",
            "sky.latitudeDeg", "46.5",
            "aim.azimuthDeg", "120",
            "aim.altitudeDeg", "35",
            "shots",
                "[{\"count\": 8, \"exposureSeconds\": 5, \"intervalSeconds\": 40, \"iso\": 800}]");
    shots = TruthFields.shots(plan);
    FrameTruth first = new NightSimulator(plan).truth(1);
    truth = Spin.ofSky(Direction.of(first.poleX(), first.poleY(), first.poleZ()));
  }

  private static SceneSky at(double... times) {
    List<SkyShot> told = new ArrayList<>();
    for (int i = 0; i < FRAMES; i++) {
      SkyShot shot = shots.get(i);
      told.add(
          new SkyShot(
              shot.field(),
              Optional.of(times[i]),
              shot.clockStepSeconds(),
              shot.exposureSeconds(),
              shot.focalLengthPx(),
              shot.orientation()));
    }
    return Registration.of(told);
  }

  private static void assertSkyKnown(SceneSky sky) {
    for (FrameSky frame : sky.frames()) {
      assertTrue(frame.isRegistered());
      double off = frame.skySpin().orElseThrow().minus(truth).rateRadPerS();
      assertEquals(0, off / SkyMotion.SIDEREAL_RATE_RAD_PER_S, 0.02);
    }
  }

  /** One frame's time is an hour late, as when the clock was set in between and set back. */
  @Test
  void oneWrongTimeIsMended() {
    assertSkyKnown(at(0, 40, 80, 120 + 3600, 160, 200, 240, 280));
  }

  /** Half of the night an hour later: the sky did not turn that far in between. */
  @Test
  void aClockSetBetweenFramesIsMended() {
    assertSkyKnown(at(0, 40, 80, 120, 3760, 3800, 3840, 3880));
  }

  /** Times at random prove no rate; the sky, at its own rate, is the clock then. */
  @Test
  void timesWithoutSenseAreNotUsed() {
    SceneSky sky = at(0, 300, 305, 310, 900, 901, 1500, 1600);
    assertEquals(SceneSky.Finding.CLOCK_UNKNOWN, sky.finding());
    assertSkyKnown(sky);
  }
}
