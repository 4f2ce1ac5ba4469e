package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import rondure.base.RobustStats;
import rondure.sim.CauseShares;
import rondure.stars.Star;
import rondure.testing.SimNight;

/**
 * Budgets of whole scenes against the simulator's truth: its star tensors with the noise of
 * measuring, registered as it was aimed.
 */
class SceneBudgetTest {
  private static final String TEN =
      "[{\"count\": 10, \"exposureSeconds\": 12.7, \"intervalSeconds\": 75, \"iso\": 800}]";
  private static final String LONG =
      "[{\"count\": 10, \"exposureSeconds\": 80, \"intervalSeconds\": 95, \"iso\": 400}]";
  private static final String GUST =
      "{\"kind\": \"gust\", \"firstFrame\": %d, \"lastFrame\": %d, \"amplitudePx\": 2.8,"
          + " \"acrossShare\": 0.35, \"frequencyHz\": 5.2, \"directionDeg\": 21.0}";

  private record Scene(BudgetNights.Night night, SceneBudget budget) {
    Terms terms(int frame) {
      FrameBudget budgetOfFrame = budget.frames().get(frame).orElseThrow();
      return budgetOfFrame.likelier(core()).sky();
    }

    CoreReading core() {
      return budget.shared().orElseThrow().core();
    }

    CauseShares truth(int frame) {
      return night.truths().get(frame).sharesPx2();
    }
  }

  private static Scene scene(String... changes) {
    BudgetNights.Night night = BudgetNights.ofTruth(SimNight.plan(changes));
    return new Scene(night, night.budget());
  }

  private static void assertExplained(Scene scene) {
    assertTrue(
        scene.budget().shared().orElseThrow().explainedShare() >= 0.95,
        "explained: " + scene.budget().shared().orElseThrow().explainedShare());
  }

  @Test
  void aCalmNightIsItsCore() {
    Scene scene = scene("shots", TEN);
    assertEquals(scene.truth(0).core(), scene.core().px2(), 0.03);
    assertTrue(scene.core().realProbability() > 0.9);
    for (int i = 0; i < 10; i++) {
      assertTrue(scene.terms(i).widening() < 1.1, "widening " + scene.terms(i).widening());
    }
    assertExplained(scene);
  }

  /** Stars of 3.3 px, where width alone does not tell core from defocus. */
  @Test
  void focusThatComesBackToOneWidthShowsTheCore() {
    Scene scene =
        scene(
            "shots",
            TEN,
            "lens.coreFwhmPx",
            "3.2",
            "focusMicrons",
            "[{\"minutes\":0,\"value\":0},{\"minutes\":3.6,\"value\":0},"
                + "{\"minutes\":3.7,\"value\":150},{\"minutes\":7.3,\"value\":150},"
                + "{\"minutes\":7.4,\"value\":0}]");
    assertEquals(scene.truth(0).core(), scene.core().px2(), 0.05);
    assertTrue(scene.core().realProbability() > 0.6, scene.core().toString());
    assertTrue(scene.truth(4).focus() > 0.5, "focus " + scene.truth(4).focus());
    assertEquals(scene.truth(4).focus(), scene.terms(4).focusPx2(), 0.1 * scene.truth(4).focus());
  }

  @Test
  void theSkysTrailIsPredicted() {
    Scene scene = scene("shots", LONG);
    for (int i = 0; i < 10; i++) {
      double length = Math.sqrt(scene.terms(i).trailingPx2() / scene.truth(i).trailing());
      assertEquals(1, length, 0.05);
      assertTrue(scene.terms(i).trailingPx2() > 0.8 * scene.terms(i).excessPx2());
    }
    assertExplained(scene);
  }

  @Test
  void focusThatDriftsIsFoundInEachFrame() {
    Scene scene =
        scene(
            "shots",
            TEN,
            "focusMicrons",
            "[{\"minutes\":0,\"value\":-60},{\"minutes\":12,\"value\":130}]");
    for (int i = 0; i < 10; i++) {
      CauseShares truth = scene.truth(i);
      assertEquals(truth.focus(), scene.terms(i).focusPx2(), 0.04 + 0.1 * truth.focus());
      assertEquals(truth.lens(), scene.terms(i).lensPx2(), 0.06);
    }
    assertExplained(scene);
  }

  /** The defocus that calm frames prove is taken off the shaken ones, and no more. */
  @Test
  void aGustOverDefocusIsSharedOut() {
    Scene scene =
        scene(
            "shots",
            TEN,
            "focusMicrons",
            "[{\"minutes\":0,\"value\":0},{\"minutes\":12,\"value\":160}]",
            "events",
            "[" + GUST.formatted(5, 8) + "]");
    for (int i = 0; i < 10; i++) {
      CauseShares truth = scene.truth(i);
      double tolerance = 0.05 + 0.12 * (truth.focus() + truth.tripod());
      assertEquals(truth.focus(), scene.terms(i).focusPx2(), tolerance, "focus of frame " + i);
      assertEquals(truth.tripod(), scene.terms(i).tripodPx2(), tolerance, "tripod of frame " + i);
      boolean gust = i >= 4 && i <= 7;
      assertEquals(gust, scene.budget().frames().get(i).orElseThrow().smear().proven());
    }
    assertExplained(scene);
  }

  /**
   * Moments of a convolution add: what a budget draws at each star has the moments measured there.
   */
  @Test
  void theStarsThatABudgetDrawsAreThoseMeasured() {
    Scene scene =
        scene(
            "shots",
            TEN,
            "focusMicrons",
            "[{\"minutes\":0,\"value\":0},{\"minutes\":12,\"value\":160}]",
            "events",
            "[" + GUST.formatted(5, 8) + "]");
    for (int i = 0; i < 10; i++) {
      FrameBlur blur =
          scene.budget().frames().get(i).orElseThrow().likelier(scene.core()).blur().orElseThrow();
      List<Star> stars = scene.night().evidence().frames().get(i).field().stars();
      double[] xs = stars.stream().mapToDouble(Star::xPx).toArray();
      double[] ys = stars.stream().mapToDouble(Star::yPx).toArray();
      List<StarBlur> drawn = blur.at(xs, ys);
      double[] round = new double[stars.size()];
      double[] cross = new double[stars.size()];
      for (int k = 0; k < round.length; k++) {
        round[k] = stars.get(k).moments().minus(drawn.get(k).moments()).meanPx2();
        cross[k] = stars.get(k).moments().minus(drawn.get(k).moments()).xyPx2();
      }
      assertEquals(0, RobustStats.median(round), 0.05, "frame " + i);
      assertEquals(0, RobustStats.median(cross), 0.04, "frame " + i);
    }
  }

  /** Constant tilt needs no prior: best focus lies on a line, and that bounds the core. */
  @Test
  void aTiltedNightKnowsItsCore() {
    Scene scene = scene("shots", TEN, "lens.tiltRightMicrons", "120");
    assertEquals(scene.truth(0).core(), scene.core().px2(), 0.04);
    double tilt = scene.budget().shared().orElseThrow().lens().tiltRightPx();
    // 120 µm at f/2 on 12 µm pixels: 5 px at the right edge, 0.832 half diagonals out.
    assertEquals(6.01, Math.abs(tilt), 0.2);
    for (int i = 0; i < 10; i++) {
      assertEquals(scene.truth(i).lens(), scene.terms(i).lensPx2(), 0.05);
      assertTrue(scene.terms(i).focusPx2() < 0.03);
    }
    assertExplained(scene);
  }

  @Test
  void aTiltedNightOutOfFocusThroughoutIsNotCalledSharp() {
    Scene scene =
        scene(
            "shots",
            TEN,
            "lens.tiltRightMicrons",
            "60",
            "focusMicrons",
            "[{\"minutes\":0,\"value\":100}]");
    for (int i = 0; i < 10; i++) {
      double disc = Math.sqrt(scene.terms(i).focusPx2() / scene.truth(i).focus());
      assertEquals(1, disc, 0.10);
    }
    assertExplained(scene);
  }

  /** Without land: made star fields know no mask, so that medians are over the whole frame. */
  @Test
  void comaIsTheLens() {
    Scene scene =
        scene(
            "shots",
            TEN,
            "lens.comaPx",
            "3.5",
            "foreground.horizonDeg",
            "-90",
            "foreground.reliefDeg",
            "0",
            "foreground.treesDeg",
            "0",
            "foreground.lights",
            "[]");
    for (int i = 0; i < 10; i++) {
      assertEquals(scene.truth(i).lens(), scene.terms(i).lensPx2(), 0.05);
      assertTrue(scene.terms(i).focusPx2() < 0.1);
    }
    assertExplained(scene);
  }

  @Test
  void theSameSceneGivesTheSameBudget() {
    assertEquals(scene("shots", TEN).budget(), scene("shots", TEN).budget());
  }

  @Test
  void aFrameWhoseSkyIsUnknownHasNoBudget() {
    BudgetNights.Night night = BudgetNights.ofTruth(SimNight.plan("shots", TEN));
    SceneBudget budget =
        SceneBudget.of(
            new SceneEvidence(
                night.evidence().frames(),
                night.evidence().places(),
                rondure.sky.SceneSky.unknown(
                    rondure.sky.SceneSky.Finding.NO_MATCH, java.util.Optional.empty(), 10)));
    assertTrue(budget.shared().isEmpty());
    assertEquals(List.of(10), List.of(budget.frames().size()));
  }
}
