package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rondure.night.NightBook;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.sky.Camera;
import rondure.sky.CameraFinding;
import rondure.sky.Projection;
import rondure.sky.SceneSky;

/** What the star paths told of a lens is said once, with its focal length and distortion. */
class LensGeometryTest {
  private static final double FOCAL_PX = 4180.6;

  private static String said(Projection projection, boolean calibrated, double k1)
      throws TemplateProblem {
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
            Optional.of(new Camera(projection, FOCAL_PX, k1, 2999.5, 1999.5)),
            calibrated,
            Optional.empty(),
            Optional.empty(),
            scores,
            Optional.empty(),
            Optional.of(0.97));
    NightBook book = BookFixture.night(4);
    Scene was = book.scenes().get(0);
    Scene scene =
        new Scene(1, 1, "one", was.focalLengthMm(), was.frames(), was.sharpestFwhmPx(), solution);
    LensSetup setup = new LensSetup(List.of(scene), book.frames());
    return String.join(" ", new LensGeometry(setup, words).sentences());
  }

  @ParameterizedTest
  @EnumSource(Projection.class)
  void aCalibratedLensIsNamedWithItsFocalLength(Projection projection) throws TemplateProblem {
    String text = said(projection, true, 0);
    boolean straight = projection == Projection.RECTILINEAR;
    String name = straight ? "straight lines straight" : "fisheye";
    assertTrue(text.contains(name) && text.contains("4181 pixels"), text);
    // 900 over 100 in squares: three times as large.
    assertEquals(!straight, text.contains("misfit is 3.0 times as large"), text);
  }

  /** 4180.6 px · 5.98 µm = 25.0 mm, where the files say 24. */
  @Test
  void theTrueFocalLengthStandsBesideThatOfTheFiles() throws TemplateProblem {
    String text = said(Projection.RECTILINEAR, true, 0);
    assertTrue(text.contains("5.98 µm that is 25.0 mm; the files say 24 mm"), text);
  }

  /** ρ (1 + k1 ρ²) = 3604.3 / 4180.6 px: with k1 = -0.05 the corner is drawn in by 4.0 %. */
  @Test
  void distortionIsSaidByTheCorner() throws TemplateProblem {
    String barrel = said(Projection.RECTILINEAR, true, -0.05);
    assertTrue(barrel.contains("draws the corners in by 4 %"), barrel);
    assertTrue(said(Projection.RECTILINEAR, true, 0.05).contains("draws the corners out by 3.5 %"));
    assertTrue(said(Projection.RECTILINEAR, true, 1e-3).contains("less than can be seen"));
  }

  @Test
  void aLensThatTheStarsDoNotTellIsSaidToBeTakenFromTheFiles() throws TemplateProblem {
    String text = said(Projection.RECTILINEAR, false, 0);
    assertTrue(text.contains("taken to keep straight lines straight"), text);
    assertTrue(text.contains("4181 pixels of focal length, as the files say"), text);
    assertFalse(text.contains("star paths fit"), text);
  }
}
