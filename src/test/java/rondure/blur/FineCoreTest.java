package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import rondure.base.Stamp;
import rondure.sim.NightPlan;
import rondure.stars.AverageStar;
import rondure.stars.StarField;
import rondure.testing.SimNight;

/** Stars hardly wider than a pixel, whose average is shaped by where the pixels happen to lie. */
class FineCoreTest {
  private static final int SAMPLES = 4;
  private static final int SIDE = 39;

  /**
   * Light around the average of forty stars of a sharp night of the second, independent simulator
   * (core of 0.39 px², pixel included): as a disc of 1.7 px with a core of 0.5 px would make it.
   */
  private static final double[][] SEEN = {
    {0, 1.0002}, {0.30, 0.9225}, {0.54, 0.7788}, {0.76, 0.5107}, {1.02, 0.2610}, {1.28, 0.1263},
    {1.52, 0.0566}, {1.77, 0.0262}, {2.00, 0.0098}, {2.26, 0.0033}, {2.53, 0.0010}, {9, 0}
  };

  @Test
  void aFormThatWantsACoreFinerThanAnyCamerasDoesNotMakeASharpNightSoft() {
    NightPlan plan =
        SimNight.plan(
            "lens.coreFwhmPx",
            "1.3",
            "shots",
            "[{\"count\":8,\"exposureSeconds\":2,\"intervalSeconds\":8,\"iso\":800}]");
    SceneEvidence measured = BudgetNights.ofTruth(plan).evidence();
    List<FrameEvidence> frames = measured.frames().stream().map(FineCoreTest::averaged).toList();
    SceneEvidence scene = new SceneEvidence(frames, measured.places(), measured.sky());
    CoreReading core = SceneBudget.of(scene).shared().orElseThrow().core();
    assertTrue(core.realProbability() > 0.6, core.toString());
  }

  private static FrameEvidence averaged(FrameEvidence frame) {
    StarField field = frame.field();
    AverageStar average = new AverageStar(AverageStar.Zone.WHOLE, 40, SAMPLES, seen());
    StarField with =
        new StarField(
            field.widthPx(),
            field.heightPx(),
            field.stars(),
            field.others(),
            field.refused(),
            field.sky(),
            field.mask(),
            List.of(average),
            field.groundLights());
    return new FrameEvidence(
        with,
        frame.exposureSeconds(),
        frame.focalLengthPx(),
        frame.diffractionFwhmPx(),
        frame.gain(),
        frame.developed(),
        frame.scene());
  }

  private static Stamp seen() {
    float[] light = new float[SIDE * SIDE];
    for (int i = 0; i < light.length; i++) {
      double out = Math.hypot(i % SIDE - SIDE / 2, i / SIDE - SIDE / 2) / SAMPLES;
      int k = 1;
      while (SEEN[k][0] < out) {
        k++;
      }
      double part = (out - SEEN[k - 1][0]) / (SEEN[k][0] - SEEN[k - 1][0]);
      light[i] = (float) (SEEN[k - 1][1] + part * (SEEN[k][1] - SEEN[k - 1][1]));
    }
    return new Stamp(SIDE, light);
  }
}
