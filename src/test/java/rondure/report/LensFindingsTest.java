package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rondure.base.Orientation;
import rondure.blur.ComaGrowth;
import rondure.blur.LensErrors;
import rondure.blur.LensFinding;
import rondure.blur.LensSurface;
import rondure.blur.SceneBudget;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.StarField;

/** What is said of lenses whose surface is known. */
class LensFindingsTest {
  private static final StarField NO_STARS =
      new StarField(
          LensFixture.WIDTH,
          LensFixture.HEIGHT,
          List.of(),
          List.of(),
          Map.of(),
          new SkyState(100, 5, 0.01, 0.5, 0),
          new SkyMask(64, List.of("1")),
          List.of(),
          List.of());

  private static Map<String, String> said(LensModel lens) throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    return new LensFindings(lens, NO_STARS, Orientation.NORMAL, words)
        .all().stream().collect(Collectors.toMap(f -> f.name(), f -> f.text()));
  }

  private static Map<String, String> said(LensSurface surface) throws TemplateProblem {
    return said(LensFixture.model(surface));
  }

  @Test
  void aFlatLensHasNothingButSmallBounds() throws TemplateProblem {
    Map<String, String> said = said(LensSurface.FLAT);
    assertTrue(said.get("Over the frame").contains("alike all over: 2.0 px"), said.toString());
    for (String name : List.of("Tilt", "Curved field", "Astigmatism", "Coma")) {
      assertTrue(said.get(name).startsWith("None was found"), name + ": " + said.get(name));
    }
    // Twice the standard errors: 0.05 px, 0.1 px; tails 3 √(2 · 0.05).
    assertTrue(said.get("Curved field").contains("less than 0.1 px"), said.toString());
    assertTrue(said.get("Astigmatism").contains("less than 0.2 px"), said.toString());
    assertTrue(said.get("Coma").contains("shorter than 0.9 px"), said.toString());
  }

  @Test
  void aCurvedFieldIsSaidWithItsDiscInTheCorner() throws TemplateProblem {
    Map<String, String> said = said(new LensSurface(0, 0, 6, 0, 0));
    assertTrue(said.get("Curved field").contains("a disc of 6.0 px"), said.toString());
    assertTrue(said.get("Coma").startsWith("None") || said.get("Coma").startsWith("Cannot"));
  }

  @Test
  void aTiltNamesTheSidesAndTheirDisc() throws TemplateProblem {
    // 2 · 4 px · 3 / √13 from side to side.
    String alike = said(new LensSurface(4, 0, 0, 0, 0)).get("Tilt");
    assertTrue(alike.contains("disc changes by 6.7 px"), alike);
    assertTrue(alike.contains("right side") && alike.contains("come out alike"), alike);
    String softer = said(new LensSurface(4, 0, 4, 0, 0)).get("Tilt");
    assertTrue(softer.startsWith("The right side is softer than the left side"), softer);
    String corner = said(new LensSurface(-3, -3, 4, 0, 0)).get("Tilt");
    assertTrue(corner.startsWith("The upper left corner is softer than the lower right"), corner);
  }

  /** Tail of coma c: 3 c, its far end by the ray (3u² + v², 2uv). */
  @Test
  void comaIsSaidByItsTail() throws TemplateProblem {
    String seidel = said(new LensSurface(0, 0, 0, 0, 4)).get("Coma");
    assertTrue(seidel.contains("up to 6.0 px long, away from the middle."), seidel);
    String steep = said(new LensSurface(0, 0, 0, 0, 4, ComaGrowth.STEEP)).get("Coma");
    assertTrue(steep.contains("It grows late"), steep);
  }

  /** Disc along minus across 5 px; with curvature of the same sign the long side is outwards. */
  @Test
  void astigmatismIsSaidWithItsDirection() throws TemplateProblem {
    String along = said(new LensSurface(0, 0, 2, 5, 0)).get("Astigmatism");
    assertTrue(along.contains("stretch away from the middle"), along);
    assertTrue(along.contains("differ by 5.0 px"), along);
    String around = said(new LensSurface(0, 0, -2, 5, 0)).get("Astigmatism");
    assertTrue(around.contains("stretch around the middle"), around);
  }

  @Test
  void whatTheStarsLeaveOpenIsNotCalledAbsent() throws TemplateProblem {
    LensErrors loose = new LensErrors(2, 2, 2, 4, 2);
    SceneBudget.Shared shared =
        LensFixture.shared(List.of(new LensFinding(LensSurface.FLAT, loose, 1)), 0.97);
    Map<String, String> said = said(LensModel.of(shared, LensFixture.WIDTH, LensFixture.HEIGHT));
    for (String name : List.of("Tilt", "Curved field", "Astigmatism", "Coma")) {
      assertTrue(said.get(name).startsWith("Cannot be told"), name + ": " + said.get(name));
    }
    assertTrue(said.get("Curved field").contains("up to 4.0 px"), said.toString());
  }

  /** A rival with a curvature of 6 px and odds of 1 in 4: √(0.05² + ¼ 36) = 3 px. */
  @Test
  void anotherLensThatFitsWidensTheErrors() {
    LensErrors own = LensFixture.ERRORS;
    LensFinding first = new LensFinding(LensSurface.FLAT, own, 0.75);
    LensFinding rival = new LensFinding(new LensSurface(0, 0, 6, 0, 1), own, 0.25);
    LensErrors wide = LensSpread.errors(List.of(first, rival));
    assertEquals(Math.hypot(0.05, 3), wide.curvaturePx(), 1e-9);
    assertEquals(Math.hypot(0.05, 0.5), wide.comaPx2(), 1e-9);
    // The same lens with all discs of the other sign makes the same stars.
    LensFinding one = new LensFinding(new LensSurface(2, 1, 3, 1, 0), own, 0.5);
    LensFinding mirrored = new LensFinding(new LensSurface(-2, -1, -3, -1, 0), own, 0.5);
    assertEquals(own, LensSpread.errors(List.of(one, mirrored)));
  }

  @Test
  void soundCornersNeedNoCaution() throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    LensModel flat = LensFixture.model(LensSurface.FLAT);
    LensFinding sure = new LensFinding(LensSurface.FLAT, LensFixture.ERRORS, 0.71);
    LensFinding rival = new LensFinding(LensSurface.FLAT, LensFixture.ERRORS, 0.29);
    LensFindings findings = new LensFindings(flat, NO_STARS, Orientation.NORMAL, words);
    assertTrue(findings.cautions(List.of(sure)).isEmpty());
    String odds = findings.cautions(List.of(sure, rival)).get(0);
    assertTrue(odds.contains("odds 29 %"), odds);
  }
}
