package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.sky.FrameSky;
import rondure.sky.SceneSky;

/** A rule of the program's own: which loss of light a jump of the camera explains. */
class KnockedLightTest {
  private static final int FRAMES = 6;
  private static final int DIM = 2;

  /** Six frames; the camera jumps before one of them. */
  private static SceneEvidence scene(int jumpBefore, double jumpPx) {
    SceneEvidence still =
        DrawnScene.wide(40).evidence(FRAMES, Optional.empty(), 1, (f, x, y) -> Moments.round(1));
    SceneSky sky = still.sky();
    List<FrameSky> frames = new ArrayList<>(sky.frames());
    FrameSky before = frames.get(jumpBefore);
    double jumpRad = jumpPx / sky.camera().orElseThrow().focalLengthPx();
    frames.set(
        jumpBefore, new FrameSky(before.attitude(), before.skySpin(), before.creep(), 0, jumpRad));
    return new SceneEvidence(
        still.frames(),
        still.places(),
        new SceneSky(sky.finding(), sky.camera(), false, sky.pole(), 1, frames, sky.tracks()));
  }

  private static List<FrameLight> lights(double... lostMag) {
    List<FrameLight> lights = new ArrayList<>();
    for (double mag : lostMag) {
      lights.add(
          new FrameLight(
              40,
              Optional.of(new FrameLight.Loss(mag, 0.02, 0, 0, 0, FRAMES, 0)),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty()));
    }
    return lights;
  }

  private static List<Integer> knocked(SceneEvidence scene, List<FrameLight> lights) {
    List<Optional<KnockedLight>> found = KnockedLight.of(scene, lights);
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      if (found.get(i).isPresent()) {
        places.add(i);
      }
    }
    return places;
  }

  @Test
  void lightMissingBesideAJumpInOneFrameAloneIsTheKnocks() {
    List<FrameLight> dim = lights(0, 0, 0.55, 0, 0, 0);
    assertEquals(List.of(DIM), knocked(scene(DIM, 9), dim));
    assertEquals(List.of(DIM), knocked(scene(DIM + 1, 9), dim));
    KnockedLight told = KnockedLight.of(scene(DIM, 9), dim).get(DIM).orElseThrow();
    assertEquals(9, told.jumpPx(), 1e-9);
    // 0.55 mag leave 10^(-0.22) = 0.6026 of the light.
    assertEquals(0.3974, told.lostShare(), 1e-4);
  }

  @Test
  void cloudThatLastsOrPassesElsewhereIsNot() {
    assertEquals(List.of(), knocked(scene(DIM, 9), lights(0, 0, 0.55, 0.5, 0.3, 0)));
    assertEquals(List.of(), knocked(scene(5, 9), lights(0, 0, 0.55, 0, 0, 0)));
  }

  @Test
  void smallShakesAndNewAimsExplainNoLoss() {
    List<FrameLight> dim = lights(0, 0, 0.55, 0, 0, 0);
    assertEquals(List.of(), knocked(scene(DIM, 1), dim));
    assertEquals(List.of(), knocked(scene(DIM, 900), dim));
  }

  @Test
  void theFrameIsTheTripods() {
    double tripod = KnockedLight.mixed(Mixing.even()).get(Cause.TRIPOD);
    assertTrue(tripod > 0.9, "tripod " + tripod);
  }
}
