package rondure.report;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.sky.Camera;
import rondure.sky.SceneSky;

/** What a scene says of its aim; its lens has a page of its own. */
class SceneWordsTest {
  @Test
  void theShareExplainedIsStatedAndTheLensLeftToItsPage() throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    SceneSolution solution =
        new SceneSolution(
            SceneSky.Finding.SKY_TURNS,
            4,
            Optional.of(Camera.rectilinear(2345, 6000, 4000)),
            true,
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.of(0.97));
    Scene scene =
        new Scene(1, 1, "one", Optional.empty(), List.of(0, 1, 2, 3), Optional.empty(), solution);
    String said = String.join(" ", SceneWords.sentences(scene, words));
    assertTrue(said.contains("explains 97 %"), said);
    assertFalse(said.contains("2345"), said);
  }
}
