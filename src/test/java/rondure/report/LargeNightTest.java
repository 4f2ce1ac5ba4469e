package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.Settings;
import rondure.crew.FrameMeasurement;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;

/**
 * Sizes, with thumbnails as grainy as real ones: 60 frames in pages and bytes, 400 and 2,000 frames
 * in a Java machine of their own.
 */
class LargeNightTest {
  private static final int MEGABYTE = 1_000_000;
  @TempDir Path folder;

  /** Writes the report of a large night: file, entries mode, frames. */
  public static void main(String[] arguments) throws IOException {
    Entries entries = Entries.valueOf(arguments[1]);
    try (OutputStream out = Files.newOutputStream(Path.of(arguments[0]))) {
      PdfReport.write(
          night(Integer.parseInt(arguments[2])),
          settings(PageSize.A4, Voice.STUDENT, entries),
          out);
    }
  }

  private static ReportSettings settings(PageSize paper, Voice voice, Entries entries) {
    return new ReportSettings(
        paper, voice, Optional.empty(), entries, 60, "0.1.0", Settings.shownDefaults());
  }

  /** The invented night with pictures of the size that real ones have. */
  private static NightBook night(int count) {
    NightBook plain = BookFixture.night(count);
    List<NightFrame> frames = new ArrayList<>();
    for (NightFrame frame : plain.frames()) {
      Optional<FrameMeasurement> measured =
          frame
              .measurement()
              .map(
                  m ->
                      new FrameMeasurement(
                          m.facts(),
                          m.linearity(),
                          m.field(),
                          ThumbnailFixture.grainy(frame.facts(), frames.size())));
      frames.add(BookFixture.with(frame, frame.verdict(), frame.graded(), measured));
    }
    return new NightBook(
        plain.inputName(),
        plain.nights(),
        plain.scenes(),
        frames,
        plain.leftOut(),
        plain.staticDetections(),
        plain.events(),
        plain.focusSeries(),
        plain.notes());
  }

  @Test
  @Tag("thorough")
  void fourHundredFramesFitIntoFortyMegabytesAndOneAndAHalfGigabytes() throws Exception {
    assertTrue(written(Entries.AUTO, 400, 1500) <= 60);
    assertTrue(Files.size(pdf(Entries.AUTO, 400)) < 40 * MEGABYTE);
  }

  @Test
  @Tag("thorough")
  void everyOneOfFourHundredFramesCanHaveItsEntry() throws Exception {
    assertTrue(written(Entries.ALL, 400, 1500) >= 400 / 3);
    assertTrue(Files.size(pdf(Entries.ALL, 400)) < 40 * MEGABYTE);
  }

  @Test
  @Tag("thorough")
  void twoThousandFramesFinishWithTableRowsForMost() throws Exception {
    assertTrue(written(Entries.AUTO, 2000, 1500) >= 60);
  }

  @Test
  @Tag("thorough")
  void sixtyFramesStayUnderFortyPagesAndTenMegabytes() throws IOException {
    for (Voice voice : Voice.values()) {
      for (PageSize paper : PageSize.values()) {
        try (PdfPages pages = PdfPages.of(night(60), settings(paper, voice, Entries.AUTO))) {
          int count = pages.document().getNumberOfPages();
          assertTrue(count >= 26 && count <= 40, paper + ", " + voice + ": " + count + " pages");
          assertTrue(pages.bytes().length < 10 * MEGABYTE, pages.bytes().length + " bytes");
        }
      }
    }
  }

  private Path pdf(Entries entries, int frames) {
    return folder.resolve(entries + "-" + frames + ".pdf");
  }

  /** Pages of a report that a Java machine with so much memory has written. */
  private int written(Entries entries, int frames, int megabytes) throws Exception {
    Path pdf = pdf(entries, frames);
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + megabytes + "m",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                LargeNightTest.class.getName(),
                pdf.toString(),
                entries.name(),
                Integer.toString(frames))
            .inheritIO()
            .start();
    assertEquals(0, process.waitFor());
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return document.getNumberOfPages();
    }
  }
}
