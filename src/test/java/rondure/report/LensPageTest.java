package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.blur.BestCase;
import rondure.blur.LensStar;
import rondure.blur.LensSurface;
import rondure.night.FocusSeries;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.Pictures;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;

/** The page on lens and sensor, and the order of all pages. */
class LensPageTest {
  private static final NightBook BOOK = withSeries(BookFixture.night(40));
  private static PdfPages pages;

  @BeforeAll
  static void write() throws IOException {
    pages = PdfPages.of(BOOK);
  }

  @AfterAll
  static void close() throws IOException {
    pages.close();
  }

  /** Five frames, the focus stepped between them. */
  private static NightBook withSeries(NightBook book) {
    List<FocusSeries.Point> points = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      points.add(new FocusSeries.Point(i, i, 1 + 0.3 * (i - 2.2) * (i - 2.2), 0.05));
    }
    FocusSeries series =
        new FocusSeries(
            1,
            1,
            false,
            points,
            List.of(),
            FocusSeries.Steps.EQUAL,
            FocusSeries.Ending.BOTH_SIDES,
            Optional.of(new FocusSeries.Curve(2.2, 0.06, 1, Math.sqrt(16 * 0.3))),
            2,
            List.of());
    return new NightBook(
        book.inputName(),
        book.nights(),
        book.scenes(),
        book.frames(),
        book.leftOut(),
        book.staticDetections(),
        book.events(),
        List.of(series),
        book.notes());
  }

  private static LensView view(NightBook book) throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    ReportSettings settings = ReportSettings.defaults("0.1.0", List.of());
    return LensPage.view(new ReportContext(book, settings, words, new Pictures()));
  }

  @Test
  void pagesAndBookmarksStandInTheOrderOfTheReport() throws IOException {
    List<String> titles = new ArrayList<>();
    PDOutlineItem item = pages.document().getDocumentCatalog().getDocumentOutline().getFirstChild();
    for (int i = 0; i < 20 && item != null; i++) {
      titles.add(item.getTitle().startsWith("Scene") ? "Scene" : item.getTitle());
      item = item.getNextSibling();
    }
    List<String> order =
        List.of(
            "The night at a glance",
            "The course of the night",
            "This lens and sensor",
            "Scene",
            "Scene",
            "Focus tests",
            "Frames without a measurement",
            "How this was measured");
    assertEquals(order, titles);
    String text = pages.text();
    int last = -1;
    for (String heading :
        List.of(
            "How the stars changed",
            "What every frame shares",
            "Frames, best first",
            "Where the focus is best",
            "What the numbers are")) {
      int at = text.indexOf(heading, last + 1);
      assertTrue(at > last, heading + " at " + at + " after " + last);
      last = at;
    }
  }

  @Test
  void thePageSaysWhatTheSurfaceHolds() throws IOException {
    String text = pages.text();
    assertTrue(text.contains("Lumen A1, Lumen 24 mm f/1.8"), "camera and lens");
    assertTrue(text.contains("pixels of 5.98 µm"), "pixels");
    assertTrue(text.contains("The best star of this lens and sensor is 2.0 px (12 µm) wide"));
    // √(1/12 + (1.029 · 0.55 µm · 2.8 / 5.98 µm / 2.355)²) · 2.355 = 0.73 px (FACTS, from memory).
    assertTrue(text.contains("Diffraction and pixels would allow 0.7 px"));
    assertTrue(text.contains("f/4") && text.contains("f/5.6"), "stopping down");
    assertFalse(text.contains("Stop down or not"), "moved from the course of the night");
  }

  @Test
  void everyPictureOfThePageIsDescribedByItsNumbers() {
    List<String> alts = pages.figures().stream().map(PdfPages.Figure::alt).toList();
    for (String words :
        List.of(
            "Average star in three parts of the frame: centre",
            "Widths beside each other: diffraction, f/2.8 0.3 px",
            "Outlines of a star at 35 places",
            "Focus curve of 5 frames: second moments from 1.01 to 2.45 px²")) {
      assertTrue(alts.stream().anyMatch(alt -> alt.startsWith(words)), words);
    }
  }

  @Test
  void theFocusCurveNamesBestFrameAndWayBack() throws IOException {
    String text = pages.text();
    assertTrue(text.contains("best focus at 2.20 ± 0.12 steps"));
    assertTrue(text.contains("HR1203.tif: nearest to best focus"));
    assertTrue(text.contains("turn back by 1.8 steps"));
  }

  /** Two focal lengths make two blocks; scenes of one lens share one, whatever the night. */
  @Test
  void eachSetUpHasOneBlock() throws TemplateProblem {
    LensView two = view(BookFixture.night(40));
    assertEquals(2, two.blocks().size());
    assertTrue(two.blocks().get(1).heading().contains("35 mm"), two.blocks().get(1).heading());
    List<NightFrame> frames = new ArrayList<>(BookFixture.night(8).frames());
    NightBook book = BookFixture.book("twice", frames);
    Scene scene = book.scenes().get(0);
    Scene again =
        new Scene(
            2,
            2,
            scene.cameraName(),
            scene.focalLengthMm(),
            scene.frames(),
            scene.sharpestFwhmPx(),
            scene.solution());
    NightBook nights =
        new NightBook(
            "twice",
            book.nights(),
            List.of(scene, again),
            frames,
            book.leftOut(),
            book.staticDetections(),
            List.of(),
            List.of(),
            List.of());
    assertEquals(1, view(nights).blocks().size());
    assertTrue(view(nights).blocks().get(0).facts().contains("scenes 1, 2"));
  }

  @Test
  void theFrameShownIsThatToWhichLeastWasAdded() {
    LensSetup setup = LensSetup.of(BookFixture.night(12)).get(0);
    LensSample sample = LensSample.of(setup);
    for (NightFrame frame : setup.frames()) {
      double added =
          frame.budget().orElseThrow().sky().excessPx2()
              - frame.budget().orElseThrow().sky().lensPx2();
      assertTrue(sample.addedPx2().orElseThrow() <= added + 1e-9, frame.file());
    }
  }

  /** Discs as 1/N, coma as 1/N²; the core loses one Airy disc and gains another. */
  @Test
  void stoppingDownFollowsGeometricOpticsAndDiffraction() throws TemplateProblem {
    LensView.Block block = view(BookFixture.night(12)).blocks().get(0);
    assertEquals(3, block.stops().size());
    assertEquals(
        List.of("all", "half", "a quarter"), block.stops().stream().map(s -> s.light()).toList());
    double from = BestCase.gaussianPx2(BestCase.airyFwhmPx(2.8, 5.98));
    double to = BestCase.gaussianPx2(BestCase.airyFwhmPx(5.6, 5.98));
    double core = Math.sqrt(4 + (to - from) * Math.pow(Moments.FWHM_PER_SIGMA, 2));
    LensSurface lens = new LensSurface(0.9, -0.4, 1.2, 0.6, 0.8);
    double sum = 0;
    for (int corner = 0; corner < 4; corner++) {
      double x = (corner % 2 == 0 ? 3 : -3) / Math.sqrt(13);
      double y = (corner < 2 ? 2 : -2) / Math.sqrt(13);
      sum += new LensStar(lens.spot(x, y, -0.5 * 1.2 / 3, 0.5), core).widthPx() / 4;
    }
    assertEquals(Figures.px(sum), block.stops().get(2).corner());
  }

  @Test
  void withoutABudgetItSaysSoPlainly() throws TemplateProblem {
    NightBook book = BookFixture.withoutLens(BookFixture.night(12));
    LensView.Block block = view(book).blocks().get(0);
    assertTrue(block.core().get(0).startsWith("There is no blur budget"), block.core().toString());
    assertTrue(block.field().isEmpty() && block.findings().isEmpty() && block.stops().isEmpty());
    assertEquals(1, block.stars().size());
  }
}
