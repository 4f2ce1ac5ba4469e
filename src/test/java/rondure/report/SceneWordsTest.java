package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.sky.Camera;
import rondure.sky.CameraFinding;
import rondure.sky.Projection;
import rondure.sky.SceneSky;

/** Every scene with a known camera says which projection its frames were read through. */
class SceneWordsTest {
  private static final double FOCAL_PX = 2345;

  private static String said(Projection projection, boolean calibrated) throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    List<CameraFinding.Score> scores =
        List.of(
            new CameraFinding.Score(projection, FOCAL_PX, 0, 100),
            new CameraFinding.Score(Projection.RECTILINEAR, FOCAL_PX, 0, 900));
    SceneSolution solution =
        new SceneSolution(
            SceneSky.Finding.SKY_TURNS,
            4,
            Optional.of(new Camera(projection, FOCAL_PX, 0, 2999.5, 1999.5)),
            calibrated,
            Optional.empty(),
            Optional.empty(),
            scores,
            Optional.empty(),
            Optional.of(0.97));
    Scene scene =
        new Scene(1, 1, "one", Optional.empty(), List.of(0, 1, 2, 3), Optional.empty(), solution);
    return String.join(" ", SceneWords.sentences(scene, words));
  }

  @ParameterizedTest
  @EnumSource(Projection.class)
  void aCalibratedLensIsNamedWithItsFocalLength(Projection projection) throws TemplateProblem {
    String text = said(projection, true);
    boolean straight = projection == Projection.RECTILINEAR;
    String name = straight ? "straight lines straight" : "fisheye";
    assertTrue(text.contains(name) && text.contains("2345 pixels"), text);
    // 900 over 100 in squares: three times as large.
    assertEquals(!straight, text.contains("misfit is 3.0 times as large"), text);
  }

  @Test
  void aLensThatTheStarsDoNotTellIsSaidToBeTakenFromTheFiles() throws TemplateProblem {
    String text = said(Projection.RECTILINEAR, false);
    assertTrue(text.contains("taken to keep straight lines straight"), text);
    assertTrue(text.contains("2345 pixels that the files give"), text);
    assertFalse(text.contains("star paths fit"), text);
  }

  @Test
  void theShareExplainedIsStated() throws TemplateProblem {
    assertTrue(said(Projection.RECTILINEAR, true).contains("explains 97 %"));
  }
}
