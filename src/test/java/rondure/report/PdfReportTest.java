package rondure.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.text.Bidi;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import rondure.night.FrameStatus;
import rondure.night.Grade;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;
import rondure.report.layout.Glyphs;

class PdfReportTest {
  private static final NightBook BOOK = BookFixture.night(24);
  private static PdfPages pages;

  @BeforeAll
  static void write() throws IOException {
    pages = PdfPages.of(BOOK);
  }

  @AfterAll
  static void close() throws IOException {
    pages.close();
  }

  private static long measured() {
    return BOOK.frames().stream().filter(f -> f.status() == FrameStatus.MEASURED).count();
  }

  @Test
  void everyFrameIsNamedAndOddCharactersAreSpelledOut() throws IOException {
    String text = pages.joinedText();
    for (NightFrame frame : BOOK.frames()) {
      String printed = Glyphs.printable(frame.file());
      // Extraction puts Hebrew back in reading order, word by word.
      boolean turned = Bidi.requiresBidi(printed.toCharArray(), 0, printed.length());
      for (String part : turned ? printed.split(" ") : new String[] {printed.replace(" ", "")}) {
        assertTrue(text.contains(part), frame.file());
      }
    }
    assertTrue(text.contains("starsU+1F30Coverthehut.jpg"), "emoji by its number");
    assertTrue(text.contains("U+0645U+062CU+0631U+06293.tif"), "Arabic letters by their numbers");
    assertTrue(text.contains("naïve-Ωmega-Ночь.tif"), "letters the font has");
  }

  @Test
  void everyCauseIsSaidInWords() throws IOException {
    String text = pages.text();
    for (String words :
        List.of(
            "Likely cause: focus",
            "Likely cause: sky trailing",
            "Likely cause: tripod",
            "Likely cause: lens edges",
            "Likely cause: haze or dew",
            "Nothing softened this frame much",
            "Undecided: sky trailing (45 %) or tripod (40 %)",
            "Not measurable",
            "b/a, 1 = round")) {
      assertTrue(text.contains(words), words);
    }
  }

  @Test
  void theFirstPageCountsWhatTheBookHolds() throws IOException {
    String text = pages.text();
    long kept =
        BOOK.frames().stream().filter(f -> f.grade().equals(Optional.of(Grade.KEEP))).count();
    assertTrue(text.contains("Keep " + kept + " of "), text.substring(0, 400));
    assertTrue(text.contains(kept + " keep "), text.substring(0, 400));
    assertTrue(text.contains("1 file could not be read"));
    assertTrue(text.contains("The eye at 100 % is the judge"));
  }

  @Test
  void everyFontIsEmbedded() throws IOException {
    assertFalse(pages.fonts().isEmpty());
    for (PDFont font : pages.fonts()) {
      assertTrue(font.isEmbedded(), font.getName());
      assertTrue(font.getName().contains("Liberation"), font.getName());
    }
    long distinct = pages.fonts().stream().map(PDFont::getName).distinct().count();
    assertTrue(distinct <= 4, "each face once: " + distinct);
  }

  @Test
  void onlyPhotographsAreRaster() throws IOException {
    assertEquals(measured(), pages.images().size());
  }

  @Test
  void photographsAreEmbeddedByteForByte() throws IOException {
    NightFrame frame =
        BOOK.frames().stream()
            .filter(f -> f.status() == FrameStatus.MEASURED)
            .findFirst()
            .orElseThrow();
    byte[] jpeg = frame.measurement().orElseThrow().thumbnail().bytes();
    String haystack = new String(pages.bytes(), StandardCharsets.ISO_8859_1);
    assertTrue(haystack.contains(new String(jpeg, StandardCharsets.ISO_8859_1)));
  }

  @Test
  void everyPictureHasInkAndASpokenDescription() throws IOException {
    List<PdfPages.Figure> figures = pages.figures();
    assertTrue(figures.size() > 5 * measured(), figures.size() + " figures");
    Map<Integer, BufferedImage> rendered = new HashMap<>();
    Map<Integer, List<PdfPages.Figure>> byPage =
        figures.stream().collect(Collectors.groupingBy(PdfPages.Figure::page));
    for (int page : List.of(0, 1, pages.document().getNumberOfPages() / 2)) {
      rendered.put(page, pages.rendered(page, 1.2f));
      for (PdfPages.Figure figure : byPage.get(page)) {
        double ink = pages.ink(figure, rendered.get(page), 1.2f);
        assertTrue(ink > 0.01, "page " + page + ", " + figure.alt() + ": ink " + ink);
      }
    }
    assertTrue(figures.stream().noneMatch(f -> f.alt().isBlank() || f.alt().equals("null")));
  }

  @Test
  void theSameNightGivesTheSameBytes() throws IOException {
    try (PdfPages again = PdfPages.of(BookFixture.night(24))) {
      assertArrayEquals(pages.bytes(), again.bytes());
    }
  }

  @Test
  void nothingTellsWhereOrByWhomItWasMade() throws IOException {
    String all = new String(pages.bytes(), StandardCharsets.ISO_8859_1);
    for (String property : List.of("user.home", "user.dir", "java.io.tmpdir")) {
      assertFalse(all.contains(System.getProperty(property) + "/"), property);
    }
    assertEquals(null, pages.document().getDocumentInformation().getAuthor());
    String packet =
        new String(
            pages.document().getDocumentCatalog().getMetadata().toByteArray(),
            StandardCharsets.UTF_8);
    assertTrue(packet.contains("<xmp:CreateDate>2031-08-14T"), packet);
    assertFalse(packet.contains(Integer.toString(LocalDate.now().getYear())), packet);
    assertEquals(
        2031,
        pages.document().getDocumentInformation().getCreationDate().get(java.util.Calendar.YEAR));
  }

  @Test
  void thereAreFieldsForNotesAndBookmarksForScenes() {
    assertEquals(
        measured() + 1, pages.document().getDocumentCatalog().getAcroForm().getFields().size());
    PDOutlineItem first =
        pages.document().getDocumentCatalog().getDocumentOutline().getFirstChild();
    assertEquals("The night at a glance", first.getTitle());
    PDOutlineItem lens = first.getNextSibling().getNextSibling();
    assertEquals("This lens and sensor", lens.getTitle());
    PDOutlineItem scene = lens.getNextSibling();
    assertEquals("Scene 1, 22:40, 24 mm, 78° from the south pole", scene.getTitle());
    assertTrue(scene.hasChildren());
  }

  /** How far stars trail follows from lens and aim: it needs no second frame, a course does. */
  @Test
  void aLoneFrameHasTheTableOfTrailsAndNoCourse() throws IOException {
    NightFrame one =
        BookFixture.night(20).frames().stream()
            .filter(Ranking::isMeasured)
            .findFirst()
            .orElseThrow();
    NightBook book = BookFixture.book("lone", List.of(one));
    try (PdfPages pages = PdfPages.of(book, ReportSettings.defaults("0.1.0", List.of()))) {
      String text = new PDFTextStripper().getText(pages.document());
      assertTrue(text.contains("How long may you expose?") && text.contains("equator"), text);
      assertTrue(text.contains("the star's own width, "), "the chart's words are text");
      assertFalse(text.contains("How the stars changed"), text);
    }
  }

  @ParameterizedTest
  @CsvSource({"1, 3, LETTER", "6, 3, LETTER", "1, 17, A4", "2, 17, LETTER"})
  void theGlanceStaysOnOnePage(int nights, int times, PageSize paper) throws IOException {
    NightBook large = BookFixture.night(120);
    List<NightFrame> frames = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      frames.addAll(large.frames());
    }
    NightBook book =
        new NightBook(
            "very long folder name ".repeat(10),
            Collections.nCopies(nights, large.nights().get(0)),
            large.scenes(),
            frames,
            large.leftOut(),
            large.staticDetections(),
            large.events(),
            large.focusSeries(),
            Collections.nCopies(9, "Two cameras had clocks 14 minutes apart; one was shifted."));
    ReportSettings settings =
        new ReportSettings(
            paper, Voice.STUDENT, Optional.empty(), Entries.NONE, 60, "0.1.0", List.of());
    try (PdfPages glance = PdfPages.of(book, settings)) {
      PDFTextStripper second = new PDFTextStripper();
      second.setStartPage(2);
      second.setEndPage(2);
      String text = second.getText(glance.document());
      assertTrue(text.contains("How the stars changed"), text);
    }
  }

  @ParameterizedTest
  @EnumSource(PageSize.class)
  void noFieldForNotesRunsOverOntoAPageOfItsOwn(PageSize paper) throws IOException {
    for (Map.Entry<String, NightBook> odd : OddBooks.all().entrySet()) {
      ReportSettings settings =
          new ReportSettings(
              paper, Voice.STUDENT, Optional.empty(), Entries.NONE, 60, "0.1.0", List.of());
      try (PdfPages pages = PdfPages.of(odd.getValue(), settings)) {
        PDFTextStripper second = new PDFTextStripper();
        second.setStartPage(2);
        second.setEndPage(2);
        String text = second.getText(pages.document());
        assertTrue(text.lines().count() > 4, paper + ", " + odd.getKey() + ": " + text);
      }
    }
  }

  @Test
  void smallNightsAndEmptyOnesMakeReportsToo() throws IOException {
    for (int frames : List.of(1, 2)) {
      try (PdfPages small = PdfPages.of(BookFixture.night(frames))) {
        // A second frame adds the course of the night and a page of entries.
        assertTrue(small.document().getNumberOfPages() <= 5 + 2 * frames, frames + " frames");
        assertTrue(small.text().contains("HR1201.tif"));
      }
    }
    try (PdfPages empty = PdfPages.of(BookFixture.book("Nothing here", List.of()))) {
      assertTrue(empty.text().contains("Nothing in this set could be measured"));
    }
  }

  @Test
  void letterPaperTeacherWordsAndSettingsAreTaken() throws IOException {
    ReportSettings settings =
        new ReportSettings(
            PageSize.LETTER,
            Voice.TEACHER,
            Optional.empty(),
            Entries.AUTO,
            4,
            "0.1.0",
            List.of(new ShownSetting("mesh", "64 px", "Follows clouds and vignetting.")));
    try (PdfPages letter = PdfPages.of(BookFixture.night(12), settings)) {
      PDRectangle paper = letter.document().getPage(0).getMediaBox();
      assertEquals(612, paper.getWidth(), 0.5);
      assertEquals(792, paper.getHeight(), 0.5);
      String text = letter.text();
      assertTrue(text.contains("Follows clouds and vignetting. 64 px mesh"));
      assertTrue(text.contains("The other measured frames"), "rows beyond the limit");
      assertTrue(text.contains("axis ratio b/a is"), "the teacher's words");
      assertEquals(
          5, letter.document().getDocumentCatalog().getAcroForm().getFields().size(), "4 entries");
    }
  }
}
