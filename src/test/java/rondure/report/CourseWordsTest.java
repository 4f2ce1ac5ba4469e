package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.night.FrameCourse;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.layout.Pictures;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;

/** The course of the night shows what the night knows, and nothing else. */
class CourseWordsTest {
  private static CourseView course(NightBook book) throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    ReportSettings settings = ReportSettings.defaults("0.1.0", List.of());
    return CoursePage.view(new ReportContext(book, settings, words, new Pictures()));
  }

  private static FrameCourse known(double lostMag, double skyMag, double jumpPx) {
    return new FrameCourse(
        Optional.of(lostMag),
        Optional.of(0.01),
        Optional.of(skyMag),
        Optional.of(jumpPx),
        Optional.of(0.0),
        Optional.empty());
  }

  private static List<NightFrame> frames(FrameCourse course) {
    return BookFixture.night(10).frames().stream()
        .map(frame -> BookFixture.withCourse(frame, course))
        .toList();
  }

  private static List<String> keys(List<NightFrame> frames) {
    NightBook book = BookFixture.book("ridge", frames);
    return CourseQuantity.of(book, frames).stream().map(CourseQuantity::key).toList();
  }

  @Test
  void aPanelStandsForWhatIsKnownOnly() {
    assertEquals(List.of("width", "roundness", "skyLevel"), keys(frames(FrameCourse.UNKNOWN)));
    assertEquals(
        List.of("width", "roundness", "sky", "light", "pointing"), keys(frames(known(0.1, 5, 2))));
    assertEquals(
        List.of("width", "roundness", "sky", "light"),
        keys(frames(known(0.1, 5, 0))),
        "a camera that stood still");
  }

  /** 2.5 log10 2 = 0.75257 mag is half the light (Pogson 1856). */
  @Test
  void lightIsAShareAndTheSkyARatio() {
    double half = 2.5 * Math.log10(2);
    List<NightFrame> frames = frames(known(half, 5, 0));
    List<NightFrame> mixed =
        List.of(
            frames.get(0),
            frames.get(1),
            BookFixture.withCourse(frames.get(2), known(0, 5 - half, 0)));
    List<CourseQuantity> all = CourseQuantity.of(BookFixture.book("ridge", mixed), mixed);
    assertEquals(List.of(1.0, 1.0, 2.0), rounded(all.get(2)));
    assertEquals(List.of(50.0, 50.0, 100.0), rounded(all.get(3)));
  }

  /** The way of the camera adds up, the first frame's jump is before the scene: 0, 2, 4, … px. */
  @Test
  void theWayOfTheCameraAddsUp() {
    List<NightFrame> frames = frames(known(0, 5, 2)).subList(0, 4);
    CourseQuantity way = CameraWay.of(BookFixture.book("ridge", frames), frames);
    assertEquals(List.of(0.0, 2.0, 4.0, 6.0), rounded(way));
  }

  private static List<Double> rounded(CourseQuantity quantity) {
    return quantity.values().stream().map(value -> Math.rint(1e6 * value) / 1e6).toList();
  }

  @Test
  void theChartIsDescribedByItsPanelsAndEvents() throws TemplateProblem {
    String alt = course(BookFixture.night(20)).charts().get(0).picture().alt();
    for (String words : List.of("Width of the stars", "Roundness", "Sky background", "wind")) {
      assertTrue(alt.contains(words), alt);
    }
    assertFalse(alt.contains("temperature"), alt);
  }

  @Test
  void aCameraThatStoodStillIsSaidToHaveDoneSo() throws TemplateProblem {
    List<NightFrame> still = frames(known(0, 5, 0));
    List<String> said = course(BookFixture.book("ridge", still)).charts().get(0).remarks();
    assertTrue(said.get(0).startsWith("The camera stood still"), said.toString());
    List<NightFrame> moved = frames(known(0, 5, 2));
    assertEquals(List.of(), course(BookFixture.book("ridge", moved)).charts().get(0).remarks());
  }

  @Test
  void aLongPauseAndAnotherScenePartTheLines() {
    NightBook book = BookFixture.night(60);
    List<NightFrame> timed = book.frames().stream().filter(NightCourse::isTimed).toList();
    boolean[] breaks = LongPause.before(timed);
    for (int i = 1; i < breaks.length; i++) {
      double seconds = (NightCourse.millis(timed.get(i)) - NightCourse.millis(timed.get(i - 1)));
      assertEquals(seconds > 900_000, breaks[i], "before frame " + i);
    }
  }

  /** Trails: ω f/p, ω = 15.0410686″/s, f/p = 4012.5 px; aims as in the table. */
  @Test
  void theChartOfTrailsIsDescribedByItsNumbers() throws TemplateProblem {
    CourseView.Exposure exposure = course(BookFixture.night(12)).exposure().orElseThrow();
    CourseView.TrailTable table = exposure.tables().get(0);
    String alt = exposure.chart().orElseThrow().picture().alt();
    List<String> limits = table.rows().get(table.rows().size() - 1).cells();
    for (int i = 0; i < limits.size(); i++) {
      assertTrue(alt.contains(table.aims().get(i) + " " + limits.get(i)), alt);
    }
    assertTrue(alt.contains("21 s: 500 rule"), alt);
    assertTrue(alt.contains("as here"), alt);
  }

  @Test
  void aLoneFrameHasThePageOnExposureAndNoOther() throws TemplateProblem {
    CourseView view = course(BookFixture.night(1));
    assertTrue(view.charts().isEmpty());
    assertFalse(view.bare());
    assertFalse(view.exposure().orElseThrow().ownPage(), "it begins the page anyway");
  }
}
