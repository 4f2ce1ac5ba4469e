package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.sim.NightPlan;
import rondure.sky.FrameSky;
import rondure.sky.SceneSky;
import rondure.sky.Spin;
import rondure.testing.SimNight;

/**
 * A head that begins to droop between two frames is foretold to have drooped in the first of them
 * already: with that taken off, its stars look sharper than any lens draws.
 */
class UnmovedFrameTest {
  private static final NightPlan SHARP =
      SimNight.plan(
          "lens.coreFwhmPx",
          "2.1",
          "shots",
          "[{\"count\":8,\"exposureSeconds\":2,\"intervalSeconds\":8,\"iso\":800}]");

  /** Of the camera in the first frame alone, as registration would say it: 4.2 px in 2 s. */
  private static SceneSky foretold(SceneSky sky) {
    double pxPerRadian = sky.camera().orElseThrow().focalLengthPx();
    List<FrameSky> frames = new ArrayList<>(sky.frames());
    FrameSky first = frames.get(0);
    Spin creep = new Spin(2.1 / pxPerRadian, 0, 0);
    frames.set(
        0,
        new FrameSky(
            first.attitude(), first.skySpin(), creep, first.spinErrorRadPerS(), first.jumpRad()));
    return new SceneSky(
        sky.finding(),
        sky.camera(),
        sky.calibrated(),
        sky.pole(),
        sky.poleErrorDeg(),
        frames,
        sky.tracks());
  }

  @Test
  void aFrameThatMovedLessThanForetoldLeavesTheOthersSharp() {
    BudgetNights.Night night = BudgetNights.ofTruth(SHARP);
    SceneEvidence seen = night.evidence();
    SceneEvidence scene = new SceneEvidence(seen.frames(), seen.places(), foretold(seen.sky()));
    SceneBudget budget = SceneBudget.of(scene);
    double truth = night.truths().get(3).sharesPx2().core();
    assertEquals(truth, budget.shared().orElseThrow().core().px2(), 0.05 * truth);
    for (Optional<FrameBudget> frame : budget.frames().subList(1, 8)) {
      double focus = frame.orElseThrow().ifCoreReal().sky().focusPx2();
      assertTrue(focus < 0.1 * truth, "focus " + focus + " px² of a core of " + truth);
    }
  }
}
