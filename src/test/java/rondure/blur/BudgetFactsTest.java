package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.Spin;

/** Physical facts of the budget on scenes drawn from formulas. */
class BudgetFactsTest {
  private static final DrawnScene WIDE = DrawnScene.wide(250);

  /** So long a lens that shake is the same everywhere. */
  private static final DrawnScene LONG =
      new DrawnScene(Camera.rectilinear(40_000, 6000, 4000), 6000, 4000, 250, 0.04);

  private static final double CORE = 0.9;

  private static FrameBudget first(SceneBudget budget) {
    return budget.frames().get(0).orElseThrow();
  }

  /** The sky alone: -ω n with the pole to the camera's right, the equator in the image centre. */
  private static Spin sky(double pxInCentre, double seconds) {
    return new Spin(0, pxInCentre / seconds / WIDE.camera().focalLengthPx(), 0);
  }

  /**
   * Steady motions along one line add as velocities: 6 px and 2 px make 8²/12 = 5.333 px², of which
   * the sky's own is 3 px² and the rest the tripod's (moments of a uniform line, L²/12).
   */
  @Test
  void sagAddsToTheSkyAsAVelocity() {
    Spin sag = sky(2, 20);
    FrameSky moving = DrawnScene.moving(sky(6, 20), sag);
    Camera camera = WIDE.camera();
    SceneEvidence scene =
        WIDE.evidence(
            4,
            Optional.of(moving),
            20,
            (frame, x, y) -> {
              double growth = Math.pow((x - camera.centreXPx()) / camera.focalLengthPx(), 2) + 1;
              double cross =
                  (x - camera.centreXPx())
                      * (y - camera.centreYPx())
                      / Math.pow(camera.focalLengthPx(), 2);
              double length = 8 * Math.hypot(growth, cross);
              return Moments.line(length, Math.atan2(cross, growth)).plus(Moments.round(CORE));
            });
    FrameBudget budget = first(SceneBudget.of(scene));
    double tripodAtCentre = budget.ifCoreReal().tripodRmsPx();
    assertEquals(Math.sqrt(64 / 12.0 - 36 / 12.0), tripodAtCentre, 0.06);
    double share = budget.ifCoreReal().sky().tripodPx2() / budget.ifCoreReal().sky().trailingPx2();
    assertEquals((64 - 36) / 36.0, share, 0.03);
  }

  /**
   * Pitch and yaw shaking alike add I + (2ρ² + ρ⁴) r̂ r̂ᵀ, ρ = tan of the field angle (by
   * multiplying out B Bᵀ of the rotational flow, Longuet-Higgins &amp; Prazdny 1980): at the corner
   * of 36 x 24 mm at 24 mm ρ² = 0.8125, so that round and radial parts grow by 0.8125 + 0.3301.
   */
  @Test
  void shakeAlikeInPitchAndYawIsRoundInTheCentreAndRadialInTheCorner() {
    View view = new View(WIDE.camera(), 6000, 4000);
    double[] xs = {WIDE.camera().centreXPx(), WIDE.camera().centreXPx() + 3000};
    double[] ys = {WIDE.camera().centreYPx(), WIDE.camera().centreYPx() + 2000};
    FieldPlaces places =
        new FieldPlaces(xs, ys, view, new FieldPlaces.Motion(Spin.NONE, Spin.NONE, 20, 1));
    assertEquals(1, places.shakeX[0] + places.shakeY[0], 1e-9);
    assertEquals(0, places.shakeX[1] + places.shakeY[1], 1e-9);
    double corner = places.shakeX[3] + places.shakeY[3];
    double spin2 =
        Math.hypot(places.shakeX[4] + places.shakeY[4], places.shakeX[5] + places.shakeY[5]);
    assertEquals(1 + 0.8125 + 0.3301, corner, 1e-4);
    assertEquals(0.8125 + 0.3301, spin2, 1e-4);
  }

  /** Core and uniform defocus are both ∝ I: no frame tells them apart behind an even lens. */
  @Test
  void coreAndConstantDefocusCannotBeToldApart() {
    SceneEvidence steady =
        WIDE.evidence(5, Optional.empty(), 10, (frame, x, y) -> Moments.round(CORE + 1));
    double steadyCondition = first(SceneBudget.of(steady)).ifCoreReal().conditionNumber();
    LensSurface lens = new LensSurface(4, 1, 2, 1, 0);
    SceneEvidence stepped =
        WIDE.evidence(
            5,
            Optional.empty(),
            10,
            (frame, x, y) -> WIDE.lens(lens, 2 * frame - 3, x, y).plus(Moments.round(CORE)));
    double steppedCondition = first(SceneBudget.of(stepped)).ifCoreReal().conditionNumber();
    assertTrue(steppedCondition < 1000, "stepped focus: " + steppedCondition);
    assertTrue(
        steadyCondition > 5 * steppedCondition,
        "steady: " + steadyCondition + ", stepped: " + steppedCondition);
  }

  /** Elongation across to along through focus gives the sign of the disc within a set. */
  @Test
  void astigmatismTellsTheSignOfTheDisc() {
    LensSurface lens = new LensSurface(0, 0, 0.5, 2, 0);
    SceneEvidence scene =
        WIDE.evidence(
            7,
            Optional.empty(),
            10,
            (frame, x, y) -> WIDE.lens(lens, frame - 3, x, y).plus(Moments.round(CORE)));
    SceneBudget budget = SceneBudget.of(scene);
    double sign = Math.signum(budget.frames().get(6).orElseThrow().meanDiscPx());
    for (int frame = 0; frame < 7; frame++) {
      double mean = frame - 3 + 0.5 / 3;
      double found = sign * budget.frames().get(frame).orElseThrow().meanDiscPx();
      assertEquals(mean, found, 0.25, "frame " + frame);
    }
    assertEquals(CORE, budget.shared().orElseThrow().core().px2(), 0.03);
    assertEquals(2, sign * budget.shared().orElseThrow().lens().astigmatismPx(), 0.15);
  }

  /** Uniform spin-2 that other frames do not have is the tripod, its round part included. */
  @Test
  void shakeOfOneFrameTakesItsRoundPartToo() {
    SceneEvidence scene =
        LONG.evidence(
            6,
            Optional.empty(),
            10,
            (frame, x, y) ->
                frame == 2 ? new Moments(CORE + 1.8, 0.3, CORE + 1.0) : Moments.round(CORE));
    SceneBudget budget = SceneBudget.of(scene);
    Terms shaken = budget.frames().get(2).orElseThrow().ifCoreReal().sky();
    assertEquals(1.4, shaken.tripodPx2(), 0.1);
    assertTrue(shaken.focusPx2() < 0.1, "focus: " + shaken.focusPx2());
    assertTrue(budget.frames().get(2).orElseThrow().smear().proven());
    assertEquals(0.5, budget.frames().get(2).orElseThrow().smear().spin2Px2(), 0.05);
    for (int calm : new int[] {0, 1, 3, 4, 5}) {
      assertTrue(!budget.frames().get(calm).orElseThrow().smear().proven());
      assertTrue(budget.frames().get(calm).orElseThrow().ifCoreReal().sky().excessPx2() < 0.1);
    }
  }

  /** A decentred lens stretches all stars of all frames alike: no shake of each of them. */
  @Test
  void aStretchThatAllFramesShareIsNoShake() {
    SceneEvidence scene =
        LONG.evidence(
            6, Optional.empty(), 10, (frame, x, y) -> new Moments(CORE + 0.17, 0.08, CORE - 0.17));
    for (Optional<FrameBudget> budget : SceneBudget.of(scene).frames()) {
      assertTrue(!budget.orElseThrow().smear().proven());
      assertTrue(budget.orElseThrow().ifCoreReal().sky().excessPx2() < 0.1);
    }
  }

  /**
   * Two points of equal light 10 px apart have a variance of 25 px² along, 12.5 px² in the mean.
   */
  @Test
  void aDoubleImageAddsTheVarianceOfTwoPoints() {
    CameraPath path =
        new CameraPath(Optional.of(new DoubleImage(6, 8, 0.5, 40, 1)), Optional.empty());
    assertEquals(12.5, path.roundPx2(), 1e-12);
    CameraPath uneven =
        new CameraPath(Optional.of(new DoubleImage(6, 8, 0.2, 40, 1)), Optional.empty());
    assertEquals(8, uneven.roundPx2(), 1e-12);
  }

  /** The nearest 2^(n/3): 30 s is 32, 15 is 16, 6 is 6.35 (common practice of cameras). */
  @Test
  void nominalExposuresAreSteppedInThirds() {
    assertEquals(32, ExposureTimes.steppedSeconds(30), 1e-9);
    assertEquals(16, ExposureTimes.steppedSeconds(15), 1e-9);
    assertEquals(6.35, ExposureTimes.steppedSeconds(6), 0.005);
    assertEquals(1, ExposureTimes.steppedSeconds(1), 1e-12);
    assertEquals(1 / 64.0, ExposureTimes.steppedSeconds(1 / 60.0), 1e-9);
  }

  @Test
  void theSetTellsHowLongTheShutterWasOpen() {
    for (double open : new double[] {30, 32}) {
      FrameSky moving = DrawnScene.moving(sky(6, 30), Spin.NONE);
      View view = new View(WIDE.camera(), 6000, 4000);
      SceneEvidence scene =
          WIDE.evidence(
              5,
              Optional.of(moving),
              30,
              (frame, x, y) -> {
                FieldPlaces.Motion motion =
                    new FieldPlaces.Motion(moving.skySpin().orElseThrow(), Spin.NONE, open, 1);
                FieldPlaces at = new FieldPlaces(new double[] {x}, new double[] {y}, view, motion);
                Moments trail =
                    new Moments(at.trail[0] + at.trail[1], at.trail[2], at.trail[0] - at.trail[1]);
                return trail.plus(Moments.round(CORE));
              });
      ExposureReading reading = SceneBudget.of(scene).shared().orElseThrow().exposures().get(0);
      assertEquals(open, reading.usedSeconds(), 0.1);
      assertEquals(open == 32 ? 1 : 0, reading.steppedProbability(), 0.05);
    }
  }

  /** A star of a crowd that was measured wrong does not move the budget. */
  @Test
  void outliersDoNotMoveTheBudget() {
    DrawnScene scene = DrawnScene.wide(120);
    SceneEvidence clean =
        scene.evidence(4, Optional.empty(), 10, (frame, x, y) -> Moments.round(CORE));
    SceneEvidence spoilt =
        scene.evidence(
            4,
            Optional.empty(),
            10,
            (frame, x, y) ->
                (int) (x * 7919) % 12 == 0 ? new Moments(6, 2, 5) : Moments.round(CORE));
    double before = SceneBudget.of(clean).shared().orElseThrow().core().px2();
    double after = SceneBudget.of(spoilt).shared().orElseThrow().core().px2();
    assertEquals(before, after, 0.03);
  }

  /** Errors are honest: the spread over scenes of other noise is what the budget says. */
  @Test
  void errorsAreOfTheSizeOfTheScatter() {
    double sum = 0;
    double told = 0;
    int scenes = 12;
    LensSurface lens = new LensSurface(1, 0.5, 1, 0.5, 0);
    for (int seed = 0; seed < scenes; seed++) {
      DrawnScene drawn = new DrawnScene(WIDE.camera(), 6000, 4000, 150 + seed, 0.06);
      SceneEvidence scene =
          drawn.evidence(
              5,
              Optional.empty(),
              10,
              (frame, x, y) -> drawn.lens(lens, 1.5 * frame, x, y).plus(Moments.round(CORE)));
      Budget budget = SceneBudget.of(scene).frames().get(4).orElseThrow().ifCoreReal();
      double off = budget.sky().focusPx2() - Math.pow(6 + 1 / 3.0, 2) / 16;
      sum += off * off;
      told += Math.pow(budget.error().focusPx2(), 2);
    }
    double ratio = Math.sqrt(told / sum);
    assertTrue(ratio > 0.4 && ratio < 3, "told over found: " + ratio);
  }
}
