package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.Spin;

/**
 * Turning a camera by a quarter, mirroring it or making its pixels smaller changes no physics: the
 * terms stay, or grow with the square of the scale.
 */
class BudgetSymmetryTest {
  private static final LensSurface LENS = new LensSurface(2, -1, 1.5, 1, 0.8);
  private static final double SECONDS = 20;

  /** Draws a lens, a drifting focus, a shaken frame and the sky, in axes of its own. */
  private interface Place {
    /** Half diagonals from the centre, in the axes of the unturned scene. */
    double[] of(double x, double y);
  }

  private static SceneEvidence scene(
      DrawnScene drawn,
      Spin sky,
      double scale,
      Place unturned,
      java.util.function.UnaryOperator<Moments> turned) {
    FrameSky moving = DrawnScene.moving(sky, Spin.NONE);
    View view = new View(drawn.camera(), drawn.widthPx(), drawn.heightPx());
    FieldPlaces.Motion motion = new FieldPlaces.Motion(sky, sky, SECONDS, 1);
    return drawn.evidence(
        5,
        Optional.of(moving),
        SECONDS,
        (frame, x, y) -> {
          double half = drawn.halfDiagonalPx();
          double[] at =
              unturned.of(
                  (x - drawn.camera().centreXPx()) / half, (y - drawn.camera().centreYPx()) / half);
          Moments lens = LENS.at(at[0], at[1], frame, 1);
          Moments shake = frame == 3 ? new Moments(1.5, 0.4, 0.6) : Moments.round(0);
          Moments own = lens.plus(shake).plus(Moments.round(0.8)).times(scale * scale);
          FieldPlaces place = new FieldPlaces(new double[] {x}, new double[] {y}, view, motion);
          Moments trail =
              new Moments(
                  place.trail[0] + place.trail[1], place.trail[2], place.trail[0] - place.trail[1]);
          return turned.apply(own).plus(trail);
        });
  }

  private static DrawnScene camera(int width, int height, double focal, double noise) {
    return new DrawnScene(Camera.rectilinear(focal, width, height), width, height, 300, noise);
  }

  private static Spin sky(double x, double y, double z) {
    return new Spin(x * 7.29e-5, y * 7.29e-5, z * 7.29e-5);
  }

  private static SceneBudget plain() {
    return SceneBudget.of(
        scene(
            camera(6000, 4000, 9000, 0.02),
            sky(0.3, 0.8, 0.52),
            1,
            (x, y) -> new double[] {x, y},
            m -> m));
  }

  private static void assertSame(SceneBudget one, SceneBudget two, double scale) {
    for (int frame = 0; frame < 5; frame++) {
      Terms before = one.frames().get(frame).orElseThrow().ifCoreReal().sky();
      Terms after = two.frames().get(frame).orElseThrow().ifCoreReal().sky();
      double square = scale * scale;
      double tolerance = 0.05 * square;
      assertEquals(before.corePx2() * square, after.corePx2(), tolerance, "core " + frame);
      assertEquals(before.focusPx2() * square, after.focusPx2(), tolerance, "focus " + frame);
      assertEquals(before.trailingPx2() * square, after.trailingPx2(), tolerance, "sky " + frame);
      assertEquals(
          before.tripodPx2() * square, after.tripodPx2(), 2 * tolerance, "tripod " + frame);
      assertEquals(before.lensPx2() * square, after.lensPx2(), tolerance, "lens " + frame);
    }
  }

  @Test
  void aQuarterTurnLeavesTheTerms() {
    // (x, y) of the turned frame is (-y, x) of the plain one turned by +90°: x' = -y, y' = x.
    SceneEvidence turned =
        scene(
            camera(4000, 6000, 9000, 0.02),
            sky(-0.8, 0.3, 0.52),
            1,
            (x, y) -> new double[] {y, -x},
            m -> new Moments(m.yyPx2(), -m.xyPx2(), m.xxPx2()));
    assertSame(plain(), SceneBudget.of(turned), 1);
  }

  @Test
  void aMirrorLeavesTheTerms() {
    // Mirrored in x an angular velocity keeps its x part and turns the others round.
    SceneEvidence mirrored =
        scene(
            camera(6000, 4000, 9000, 0.02),
            sky(0.3, -0.8, -0.52),
            1,
            (x, y) -> new double[] {-x, y},
            m -> new Moments(m.xxPx2(), -m.xyPx2(), m.yyPx2()));
    assertSame(plain(), SceneBudget.of(mirrored), 1);
  }

  @Test
  void smallerPixelsScaleTheTerms() {
    double scale = 1.25;
    SceneEvidence finer =
        scene(
            camera(7500, 5000, 9000 * scale, 0.02 * scale * scale),
            sky(0.3, 0.8, 0.52),
            scale,
            (x, y) -> new double[] {x, y},
            m -> m);
    assertSame(plain(), SceneBudget.of(finer), scale);
  }
}
