package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.sky.FrameSky;
import rondure.sky.ImageVelocity;
import rondure.sky.Rotation;
import rondure.sky.SceneSky;
import rondure.sky.Spin;
import rondure.stars.SkyMask;
import rondure.stars.StarField;

/** What frames tell of the sky's trail when no fact tells how long the shutter was open. */
class OpenTimesTest {
  private static final DrawnScene WIDE = DrawnScene.wide(200);
  private static final double CORE = 0.9;
  private static final double SPACING_SECONDS = 12;
  private static final int FRAMES = 6;
  private static final int MESH_PX = 40;

  /** The stars move right by 0.5 px a second in the image centre. */
  private static final Spin SKY = new Spin(0, 0.5 / WIDE.camera().focalLengthPx(), 0);

  /** The exact trail of some seconds at a place: velocity over a rectilinear field. */
  private static Moments trail(double seconds, double x, double y) {
    double f = WIDE.camera().focalLengthPx();
    double right = (x - WIDE.camera().centreXPx()) / f;
    double down = (y - WIDE.camera().centreYPx()) / f;
    double length = 0.5 * seconds * Math.hypot(1 + right * right, right * down);
    double angle = Math.atan2(right * down, 1 + right * right);
    return Moments.line(length, angle).plus(Moments.round(CORE));
  }

  /** The camera nods: a line of some px down in the image centre, through the projection. */
  private static Moments nod(double px, double x, double y) {
    Spin down = new Spin(-px / WIDE.camera().focalLengthPx(), 0, 0);
    ImageVelocity flow = WIDE.camera().flow(down, x, y);
    return Moments.line(flow.speedPxPerS(), flow.directionRad());
  }

  /** Frames on a fixed tripod, evenly spaced, without exposure times. */
  private static SceneEvidence untimed(DrawnScene.Shape shape) {
    return untimed(shape, SPACING_SECONDS);
  }

  private static SceneEvidence untimed(DrawnScene.Shape shape, double spacingSeconds) {
    SceneEvidence timed =
        WIDE.evidence(FRAMES, Optional.of(DrawnScene.moving(SKY, Spin.NONE)), 1, shape);
    List<FrameSky> skies = new ArrayList<>();
    List<FrameEvidence> frames = new ArrayList<>();
    for (int i = 0; i < FRAMES; i++) {
      Rotation turned = Rotation.of(SKY, i * spacingSeconds);
      skies.add(new FrameSky(Optional.of(turned), Optional.of(SKY), Spin.NONE, 0, 0));
      FrameEvidence f = timed.frames().get(i);
      frames.add(
          new FrameEvidence(
              f.field(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              f.developed(),
              f.scene()));
    }
    SceneSky sky =
        new SceneSky(
            SceneSky.Finding.CLOCK_UNKNOWN,
            Optional.of(WIDE.camera()),
            true,
            Optional.empty(),
            1,
            skies,
            timed.sky().tracks());
    return new SceneEvidence(frames, timed.places(), sky);
  }

  private static Map<Cause, Double> odds(SceneEvidence scene, int frame) {
    return new SceneAttribution(AttributionSettings.defaults())
        .judge(scene)
        .frames()
        .get(frame)
        .verdict()
        .probabilities();
  }

  /** M = T²/12 v vᵀ: the budget finds the 10 s that no file tells, to 2 %. */
  @Test
  void trailsAlikeAlongTheStarsMotionAreTheSkys() {
    SceneEvidence scene = untimed((frame, x, y) -> trail(10, x, y));
    SceneBudget.Shared shared = SceneBudget.of(scene).shared().orElseThrow();
    for (ExposureReading exposure : shared.exposures()) {
      assertEquals(10, exposure.usedSeconds(), 0.2);
    }
    assertTrue(odds(lit(scene), 2).get(Cause.TRAILING) > 0.8, () -> "" + odds(lit(scene), 2));
  }

  /**
   * A mount that drifts and a head that gives way do so as well, at any rate. This motion is about
   * the picture's upright axis, where heads slip more often than poles stand: that alone says
   * little.
   */
  @Test
  void withoutClockAndLampsNeitherSkyNorTripodIsSure() {
    Map<Cause, Double> odds = odds(untimed((frame, x, y) -> trail(10, x, y)), 2);
    assertTrue(odds.get(Cause.TRAILING) < 0.6 && odds.get(Cause.TRIPOD) < 0.62, () -> "" + odds);
    assertTrue(odds.get(Cause.TRAILING) > 0.3 && odds.get(Cause.TRIPOD) > 0.3, () -> "" + odds);
  }

  /** The same with lamps on the ground that stay in place. */
  private static SceneEvidence lit(SceneEvidence scene) {
    return new SceneEvidence(scene.frames(), scene.places(), scene.sky(), scene.hotPixels(), 4);
  }

  /** Land on the right, its edge as many px further right in each frame than in the one before. */
  private static SceneEvidence withLand(SceneEvidence scene, double movingPx) {
    List<FrameEvidence> frames = new ArrayList<>();
    for (int i = 0; i < scene.frames().size(); i++) {
      FrameEvidence frame = scene.frames().get(i);
      int sky = (int) Math.round((4000 + i * movingPx) / MESH_PX);
      String row = "1".repeat(sky) + "0".repeat(6000 / MESH_PX - sky);
      SkyMask mask = new SkyMask(MESH_PX, Collections.nCopies(4000 / MESH_PX, row));
      StarField field = frame.field();
      frames.add(
          frame.with(
              new StarField(
                  field.widthPx(),
                  field.heightPx(),
                  field.stars(),
                  field.others(),
                  field.refused(),
                  field.sky(),
                  mask,
                  field.averageStars(),
                  field.groundLights())));
    }
    return new SceneEvidence(frames, scene.places(), scene.sky());
  }

  /** 0.5 px a second, 100 s from frame to frame: 250 px over the scene, six cells of 40 px. */
  @Test
  void aSkylineThatMovesWithTheStarsProvesThatTheCameraGaveWay() {
    SceneEvidence scene = untimed((frame, x, y) -> trail(10, x, y), 100);
    SkylineMotion moving = SkylineMotion.of(withLand(scene, 50)).orElseThrow();
    assertEquals(1, moving.share(), 0.2);
    assertTrue(odds(withLand(scene, 50), 2).get(Cause.TRIPOD) > 0.8);
    SkylineMotion still = SkylineMotion.of(withLand(scene, 0)).orElseThrow();
    assertEquals(0, still.share(), 0.01);
    assertTrue(odds(withLand(scene, 0), 2).get(Cause.TRAILING) > 0.8);
    assertTrue(SkylineMotion.of(scene).isEmpty());
  }

  @Test
  void oneFrameSmearedAcrossTheMotionIsTheTripods() {
    SceneEvidence scene =
        untimed((frame, x, y) -> frame == 3 ? trail(2, x, y).plus(nod(5, x, y)) : trail(2, x, y));
    assertTrue(odds(scene, 3).get(Cause.TRIPOD) > 0.8, () -> "" + odds(scene, 3));
    assertTrue(odds(scene, 2).get(Cause.NONE) > 0.6, () -> "" + odds(scene, 2));
  }

  /** It may be shaken, or its exposure longer than the others' unseen. */
  @Test
  void oneFrameSmearedMoreAlongTheMotionIsUndecidedBetweenSkyAndTripod() {
    SceneEvidence scene = untimed((frame, x, y) -> trail(frame == 3 ? 10 : 2, x, y));
    Map<Cause, Double> odds = odds(scene, 3);
    assertTrue(odds.get(Cause.TRAILING) < 0.6 && odds.get(Cause.TRIPOD) < 0.6, () -> "" + odds);
    assertTrue(odds.get(Cause.TRAILING) + odds.get(Cause.TRIPOD) > 0.8, () -> "" + odds);
  }

  /** The shutter must close before it opens again: 20 s do not fit into 12. */
  @Test
  void aSmearLongerThanTheWayToTheNextFrameIsNotTheSkysAlone() {
    SceneEvidence scene = untimed((frame, x, y) -> trail(frame == 3 ? 20 : 2, x, y));
    assertTrue(odds(scene, 3).get(Cause.TRIPOD) > 0.6, () -> "" + odds(scene, 3));
  }

  /** Round stars on a moving sky: noise may fit squares below 0, which no exposure has. */
  @Test
  void roundStarsGiveBriefExposuresAndNoNumbersThatAreNone() {
    SceneEvidence scene = untimed((frame, x, y) -> Moments.round(CORE));
    for (ExposureReading exposure : SceneBudget.of(scene).shared().orElseThrow().exposures()) {
      assertTrue(exposure.usedSeconds() > 0 && exposure.usedSeconds() < 3, () -> "" + exposure);
    }
    assertTrue(odds(scene, 1).get(Cause.TRAILING) < 0.1, () -> "" + odds(scene, 1));
  }
}
