package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;

/** Sizes: 60 frames in pages and bytes, 400 frames in a Java machine of its own with 1.5 GB. */
class LargeNightTest {
  private static final int FRAMES = 400;
  @TempDir Path folder;

  /** Writes the report of a large night: file and entries mode. */
  public static void main(String[] arguments) throws IOException {
    ReportSettings settings =
        new ReportSettings(
            PageSize.A4,
            Voice.STUDENT,
            Optional.empty(),
            Entries.valueOf(arguments[1]),
            60,
            "0.1.0",
            List.of());
    try (OutputStream out = Files.newOutputStream(Path.of(arguments[0]))) {
      PdfReport.write(BookFixture.night(FRAMES), settings, out);
    }
  }

  @Test
  @Tag("thorough")
  void fourHundredFramesFitIntoOneAndAHalfGigabytes() throws Exception {
    assertTrue(pagesWith(Entries.AUTO) <= 60);
    assertTrue(pagesWith(Entries.ALL) >= FRAMES / 3);
  }

  @Test
  @Tag("thorough")
  void sixtyFramesStayUnderFortyPagesAndTenMegabytes() throws IOException {
    for (PageSize paper : PageSize.values()) {
      ReportSettings settings =
          new ReportSettings(
              paper, Voice.STUDENT, Optional.empty(), Entries.AUTO, 60, "0.1.0", List.of());
      try (PdfPages pages = PdfPages.of(BookFixture.night(60), settings)) {
        int count = pages.document().getNumberOfPages();
        assertTrue(count >= 26 && count <= 40, paper + ": " + count + " pages");
        assertTrue(pages.bytes().length < 10_000_000, pages.bytes().length + " bytes");
      }
    }
  }

  private int pagesWith(Entries entries) throws Exception {
    Path pdf = folder.resolve(entries + ".pdf");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1500m",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                LargeNightTest.class.getName(),
                pdf.toString(),
                entries.name())
            .inheritIO()
            .start();
    assertEquals(0, process.waitFor());
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return document.getNumberOfPages();
    }
  }
}
