package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.night.NightBook;
import rondure.night.Scene;
import rondure.night.SceneSolution;

/** Scenes are named by number, start, focal length and distance from the nearer pole. */
class SceneNameTest {

  private static Scene scene(Scene scene, Optional<Double> declination, double poleErrorDeg) {
    SceneSolution solution = scene.solution();
    return new Scene(
        scene.number(),
        scene.nightIndex(),
        scene.cameraName(),
        declination.isEmpty() ? Optional.empty() : scene.focalLengthMm(),
        scene.frames(),
        scene.sharpestFwhmPx(),
        new SceneSolution(
            solution.finding(),
            solution.registeredFrames(),
            solution.camera(),
            true,
            declination,
            Optional.of(poleErrorDeg),
            List.of(),
            Optional.empty(),
            Optional.empty()));
  }

  @Test
  void theDistanceIsFromTheNearerPole() {
    NightBook book = BookFixture.night(12);
    Scene scene = book.scenes().get(0);
    String south = "Scene 1, 22:40, 24 mm, 35° from the south pole";
    assertEquals(south, SceneName.of(book, scene(scene, Optional.of(-55.2), 0.1)));
    String north = "Scene 1, 22:40, 24 mm, 0° from the north pole";
    assertEquals(north, SceneName.of(book, scene(scene, Optional.of(89.9), 0.1)));
  }

  @Test
  void whatIsNotKnownIsLeftOut() {
    NightBook book = BookFixture.night(12);
    Scene scene = book.scenes().get(0);
    assertEquals("Scene 1, 22:40", SceneName.of(book, scene(scene, Optional.empty(), 0)));
    assertEquals("Scene 1, 22:40, 24 mm", SceneName.of(book, scene(scene, Optional.of(20.0), 30)));
  }

  @Test
  void severalNightsNeedTheDate() {
    NightBook book = BookFixture.night(120);
    String name = SceneName.of(book, book.scenes().get(1));
    assertEquals("Scene 2, 2031-08-15 23:29, 35 mm, 78° from the south pole", name);
  }
}
