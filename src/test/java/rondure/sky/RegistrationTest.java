package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.testing.SimNight;
import rondure.testing.TruthFields;

class RegistrationTest {

  private static final String EVENTS = "events";

  static Stream<Arguments> nights() {
    return Stream.of(
        night("sample lens", 12, 46.5, 162, 20, 12, 75),
        night("14 mm", 14, 46.5, 162, 40, 12, 75),
        night("24 mm east", 24, 46.5, 90, 30, 12, 40),
        night("24 mm equator", 24, 46.5, 180, 43, 12, 40),
        night("24 mm pole in frame", 24, 46.5, 0, 45, 12, 40),
        night("50 mm south", 50, -35, 120, 45, 12, 20),
        night("135 mm", 135, 46.5, 200, 45, 12, 8),
        night("southern pole", 24, -40, 180, 40, 12, 40),
        night("wide gaps", 24, 46.5, 180, 40, 5, 600),
        night("two frames", 24, 46.5, 120, 40, 2, 40));
  }

  private static Arguments night(
      String name,
      double focal,
      double latitude,
      double azimuth,
      double altitude,
      int count,
      double gap) {
    return Arguments.of(
        name,
        SimNight.plan(
            "lens.focalLengthMm", "" + focal,
            "lens.distortionK1", "0",
            "stars.faintestMagnitude", focal > 40 ? "10.5" : "9.5",
            "stars.starsPerSquareDegree", focal > 100 ? "30" : focal > 20 ? "10" : "3",
            "sky.latitudeDeg", "" + latitude,
            "aim.azimuthDeg", "" + azimuth,
            "aim.altitudeDeg", "" + altitude,
            "shots",
                "[{\"count\": "
                    + count
                    + ", \"exposureSeconds\": 5, \"intervalSeconds\": "
                    + gap
                    + ", \"iso\": 800}]"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("nights")
  void thePoleIsFound(String name, NightPlan plan) {
    List<SkyShot> shots = TruthFields.shots(plan);
    long t = System.nanoTime();
    SceneSky sky = Registration.of(shots);
    double ms = (System.nanoTime() - t) / 1e6;
    NightSimulator simulator = new NightSimulator(plan);
    double worst = 0;
    double norm = 0;
    int registered = 0;
    for (int i = 0; i < shots.size(); i++) {
      var truth = simulator.truth(i + 1);
      FrameSky frame = sky.frames().get(i);
      if (frame.starSpin().isPresent()) {
        registered++;
        Spin want = Spin.ofSky(Direction.of(truth.poleX(), truth.poleY(), truth.poleZ()));
        double off = frame.starSpin().get().minus(want).rateRadPerS();
        worst = Math.max(worst, off / SkyMotion.SIDEREAL_RATE_RAD_PER_S);
        norm = off / Math.sqrt(3) / frame.spinErrorRadPerS();
      }
    }
    System.out.printf(
        "%-20s %s stars %d registered %d/%d pole err %.3f deg (said %.3f) norm %.2f cal %s f %.2f ms %.0f jumps %s creep %s tracks %d%n",
        name,
        sky.finding(),
        shots.get(0).field().stars().size(),
        registered,
        shots.size(),
        Math.toDegrees(worst),
        sky.poleErrorDeg(),
        norm,
        sky.calibrated(),
        sky.camera().map(Camera::focalLengthPx).orElse(0.0) / plan.pixelsPerRadian(),
        ms,
        sky.frames().stream().filter(f -> f.jumpRad() > 0).count(),
        sky.frames().stream().filter(f -> f.creep().rateRadPerS() > 0).count(),
        sky.tracks().count());
    assertEquals(SceneSky.Finding.SKY_TURNS, sky.finding());
    assertEquals(shots.size(), registered);
    assertTrue(Math.toDegrees(worst) < 3 * sky.poleErrorDeg(), name);
  }
}
