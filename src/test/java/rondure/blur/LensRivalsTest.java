package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;

/**
 * Curvature and astigmatism about a sharp centre: with the discs D = c r² ± a r²/2 of geometrical
 * optics the round part is (c² + a²/4) r⁴ / 16, the radial one c a r⁴ / 16. The first alone is what
 * both have in common; the frame's disc d adds 2 d c r² / 16 to the round part and d a r² / 16 to
 * the radial one.
 */
class LensRivalsTest {
  private static final DrawnScene FEW = DrawnScene.wide(40);
  private static final double CORE = 0.9;
  private static final double LARGE = 16;
  private static final LensSurface CURVED = new LensSurface(0, 0, LARGE, 0, 0);
  private static final LensSurface ASTIGMATIC = new LensSurface(0, 0, 0, 2 * LARGE, 0);

  private static SceneEvidence scene(LensSurface lens, IntToDoubleFunction discPx) {
    return FEW.evidence(
        6,
        Optional.empty(),
        10,
        (frame, x, y) ->
            FEW.lens(lens, discPx.applyAsDouble(frame), x, y).plus(Moments.round(CORE)));
  }

  /** Odds where the core is known to be the lens at its best. */
  private static Map<Cause, Double> odds(SceneEvidence scene, int frame) {
    SceneBudget budget = SceneBudget.of(scene);
    BudgetOdds odds = new BudgetOdds(AttributionSettings.defaults(), Leeway.fitted());
    CoreReading sure = new CoreReading(CORE, 2.2, CORE, 1);
    return odds.of(budget.frames().get(frame).orElseThrow(), sure, LightMissing.NOTHING);
  }

  @Test
  void aboutASharpCentreCurvatureAndAstigmatismWidenAlike() {
    for (double x = -0.8; x <= 0.8; x += 0.4) {
      Moments curved = CURVED.at(x, 0.3, 0, 1);
      Moments astigmatic = ASTIGMATIC.at(x, 0.3, 0, 1);
      assertEquals(curved.xxPx2(), astigmatic.xxPx2(), 1e-12);
      assertEquals(curved.xyPx2(), astigmatic.xyPx2(), 1e-12);
      assertEquals(curved.yyPx2(), astigmatic.yyPx2(), 1e-12);
    }
  }

  /** What refocusing would cure is focus, all else the lens: here the stars do not tell which. */
  @Test
  void whereTheCentreIsSharpInEveryFrameNeitherIsNamedForSure() {
    Map<Cause, Double> odds = odds(scene(ASTIGMATIC, frame -> 0), 2);
    assertTrue(odds.get(Cause.FOCUS) < 0.8 && odds.get(Cause.FOCUS) > 0.15, odds.toString());
    assertTrue(odds.get(Cause.LENS) < 0.8 && odds.get(Cause.LENS) > 0.15, odds.toString());
    Budget budget =
        SceneBudget.of(scene(ASTIGMATIC, frame -> 0)).frames().get(2).orElseThrow().ifCoreReal();
    assertTrue(budget.error().focusPx2() > 0.3, budget.error().toString());
  }

  @Test
  void aFocusThatChangesTellsAnAstigmaticLensFromACurvedOne() {
    IntToDoubleFunction stepped = frame -> 0.6 * (frame - 2.5);
    Map<Cause, Double> astigmatic = odds(scene(ASTIGMATIC, stepped), 2);
    assertTrue(astigmatic.get(Cause.LENS) > 0.9, astigmatic.toString());
    Map<Cause, Double> curved = odds(scene(CURVED, stepped), 3);
    assertTrue(curved.get(Cause.FOCUS) > 0.9, curved.toString());
  }

  /**
   * A tilt t adds 2 t c x r² / 16 to the round part of a curved field and t a x r² / 16 to the
   * radial part of an astigmatic one: odd over the field, as no error of the width by the width is.
   */
  @Test
  void aTiltTellsThemApartThoughWidthsAreOff() {
    LensSurface curved = new LensSurface(0.2, 0, LARGE, 0, 0);
    LensSurface astigmatic = new LensSurface(0.2, 0, 0, 2 * LARGE, 0);
    assertTrue(odds(widened(curved), 2).get(Cause.FOCUS) > 0.8);
    assertTrue(odds(widened(astigmatic), 2).get(Cause.LENS) > 0.8);
  }

  /** What the lens adds comes out a quarter too large. */
  private static SceneEvidence widened(LensSurface lens) {
    return FEW.evidence(
        6,
        Optional.empty(),
        10,
        (frame, x, y) -> FEW.lens(lens, 0, x, y).times(1.25).plus(Moments.round(CORE)));
  }
}
