package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.ComaShape;
import rondure.testing.Fields;

class ComaTailsTest {
  private static final DrawnScene SCENE = DrawnScene.wide(150);
  private static final double CORE = 0.6;

  /** A coma that one corner's length of 6 px makes, growing with r². */
  private static final LensSurface COMATIC = new LensSurface(0, 0, 0, 0, 36, ComaGrowth.STEEP);

  /**
   * Seidel's rays c ρ² (2 + cos 2θ, sin 2θ) summed over the pupil: the definition, not the result.
   */
  @Test
  void aComasThirdMomentIsThatOfItsRays() {
    double c = 3;
    int rings = 400;
    int spokes = 64;
    double mean = 0;
    for (int pass = 0; pass < 2; pass++) {
      double sum = 0;
      double third = 0;
      for (int ring = 0; ring < rings; ring++) {
        double square = (ring + 0.5) / rings;
        for (int spoke = 0; spoke < spokes; spoke++) {
          double twice = 4 * Math.PI * spoke / spokes;
          double x = c * square * (2 + Math.cos(twice)) - mean;
          double y = c * square * Math.sin(twice);
          sum += x / rings / spokes;
          third += (x * x + y * y) * x / rings / spokes;
        }
      }
      if (pass == 1) {
        // beside an even second moment of 1, over the mean square of the distance
        double skew = third / (2 * (1 + c * c / 3));
        assertEquals(skew, new LensSurface(0, 0, 0, 0, c * c).comaSkewPx(1, 1, 1), 1e-3 * skew);
      }
      mean += sum;
    }
  }

  @Test
  void tailsOutwardsOrInwardsMakeItTheLens() {
    for (double side : new double[] {1, -1}) {
      Map<Cause, Double> odds = odds(COMATIC, side);
      assertTrue(odds.get(Cause.LENS) > 0.85, side + ": " + odds);
    }
  }

  /**
   * Second moments that grow as r⁴, without tails, are no coma's: discs that refocusing may cure.
   */
  @Test
  void evenStarsAreNoComas() {
    Map<Cause, Double> even = odds(COMATIC, 0);
    assertTrue(even.get(Cause.FOCUS) > 0.3, even.toString());
  }

  private static Map<Cause, Double> odds(LensSurface lens, double side) {
    SceneBudget budget = SceneBudget.of(scene(lens, side));
    BudgetOdds odds = new BudgetOdds(AttributionSettings.defaults(), Leeway.fitted());
    CoreReading sure = new CoreReading(CORE, 2.2, CORE, 1, 1);
    return odds.of(budget.frames().get(0).orElseThrow(), sure, LightMissing.NOTHING);
  }

  /** Six frames whose stars have the lens's moments, and its third moments on one side. */
  private static SceneEvidence scene(LensSurface lens, double side) {
    SceneEvidence even =
        SCENE.evidence(6, Optional.empty(), 10, (frame, x, y) -> seen(lens, side, x, y));
    List<FrameEvidence> frames = new ArrayList<>();
    for (FrameEvidence frame : even.frames()) {
      frames.add(frame.with(lopsided(frame.field(), lens, side)));
    }
    return new SceneEvidence(frames, even.places(), even.sky());
  }

  /** As fits show it; where stars are even their moments are those of discs, which show whole. */
  private static Moments seen(LensSurface lens, double side, double xPx, double yPx) {
    if (side == 0) {
      return SCENE.lens(lens, 0, xPx, yPx).plus(Moments.round(CORE));
    }
    double x = (xPx - SCENE.camera().centreXPx()) / SCENE.halfDiagonalPx();
    double y = (yPx - SCENE.camera().centreYPx()) / SCENE.halfDiagonalPx();
    double coefficient = Math.sqrt(3 * lens.roundPx2(x, y, 0, 1));
    Moments core = Moments.round(CORE);
    return core.plus(new ComaShape(coefficient, Math.atan2(y, x)).seenBeside(core));
  }

  private static StarField lopsided(StarField field, LensSurface lens, double side) {
    List<Star> stars = new ArrayList<>();
    for (Star star : field.stars()) {
      double x = (star.xPx() - SCENE.camera().centreXPx()) / SCENE.halfDiagonalPx();
      double y = (star.yPx() - SCENE.camera().centreYPx()) / SCENE.halfDiagonalPx();
      double radius = Math.hypot(x, y);
      double skew = side * lens.comaSkewPx(radius, 1, CORE);
      stars.add(
          new Star(
              star.xPx(),
              star.yPx(),
              star.fluxCounts(),
              star.snr(),
              star.moments(),
              star.xxErrorPx2(),
              star.xyErrorPx2(),
              star.yyErrorPx2(),
              star.fwhmMajorPx(),
              star.fwhmMinorPx(),
              skew * x / radius,
              skew * y / radius,
              star.wingRatio(),
              star.peakFraction()));
    }
    return Fields.field(field.widthPx(), field.heightPx(), stars, List.of());
  }
}
