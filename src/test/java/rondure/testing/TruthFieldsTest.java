package rondure.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import rondure.base.RobustStats;
import rondure.sim.FrameTruth;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sky.SkyShot;
import rondure.stars.Star;

class TruthFieldsTest {

  @Test
  void theTruthWithoutAPictureIsTheTruthOfThePicture() {
    NightPlan plan = SimNight.plan("camera.widthPx", "400", "camera.heightPx", "300");
    FrameTruth rendered = NightSimulator.render(plan, 1).truth();
    assertEquals(rendered, new NightSimulator(plan).truth(1));
  }

  @Test
  void noiseIsAsLargeAsTheErrorsSay() {
    NightPlan plan = SimNight.plan();
    List<SkyShot> shots = TruthFields.shots(plan);
    assertEquals(1, shots.size());
    FrameTruth truth = new NightSimulator(plan).truth(1);
    double[] off =
        shots.get(0).field().stars().stream()
            .mapToDouble(s -> (s.moments().xxPx2() - nearestXx(truth, s)) / s.xxErrorPx2())
            .toArray();
    assertTrue(off.length > 50, "stars: " + off.length);
    assertEquals(1, RobustStats.madSigma(off), 4 / Math.sqrt(off.length));
  }

  private static double nearestXx(FrameTruth truth, Star star) {
    return truth.stars().stream()
        .min(
            (a, b) ->
                Double.compare(
                    Math.hypot(a.xPx() - star.xPx(), a.yPx() - star.yPx()),
                    Math.hypot(b.xPx() - star.xPx(), b.yPx() - star.yPx())))
        .orElseThrow()
        .xxPx2();
  }
}
