package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/**
 * A night whose names, EXIF, XMP and sidecars carry markup, template tags, formulas, escape
 * sequences, overrides of direction, paths, external entities and addresses: all of it comes out as
 * plain text or not at all, nobody is called, and nothing else is read.
 */
class NoWayInTest {
  private static final String SECRET = "the-secret-of-another-file";

  @TempDir Path home;

  @Test
  void whatFilesSayIsInertInEveryOutput() throws IOException {
    Path secret = Files.writeString(home.resolve("secret.txt"), SECRET);
    try (Doorbell bell = new Doorbell()) {
      HostileFiles files = new HostileFiles(secret, bell.port());
      Path night = files.night(home.resolve("night <i>{{title}}"));
      Path out = home.resolve("out");
      Run run = Run.of("report", "--workers", 1, "--sidecars", "--star-table", "--out", out, night);
      assertTrue(run.code() <= 1, run.err());
      assertEquals(HostileFiles.COUNT, Run.frames(out).size(), "every file by name");
      assertEquals(0, bell.rings(), "somebody called");
      assertInertText(run.out() + run.err() + Files.readString(out.resolve("run.log")));
      assertInertCsv(Files.readString(out.resolve("frames.csv")).replace("\r\n", "\n"));
      assertInertPdf(out.resolve("report.pdf"));
      assertNothingOfTheSecret(out);
      bell.ringOnce();
      assertEquals(1, bell.rings(), "the bell works");
    }
  }

  /** What could move the cursor, start a line or turn the direction. */
  private static void assertInertText(String text) {
    Pattern acting = Pattern.compile("[\\p{Cc}\\p{Zl}\\p{Zp}\u202A-\u202E\u2066-\u2069&&[^\n]]");
    assertFalse(acting.matcher(text).find(), text);
  }

  /** No cell that a spreadsheet would reckon out; numbers may be below zero. */
  private static void assertInertCsv(String csv) {
    assertTrue(csv.contains("'=1+1"), "the formula is there as text: " + csv);
    Pattern formula = Pattern.compile("(?m)(^|,)\"?([=+@\t\r]|-[^0-9])");
    assertFalse(formula.matcher(csv).find(), csv);
    assertInertText(csv);
  }

  /** No link, script or action goes anywhere; markup is shown as it stands. */
  private static void assertInertPdf(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (PDPage page : document.getPages()) {
        for (PDAnnotation annotation : page.getAnnotations()) {
          boolean leads =
              annotation instanceof PDAnnotationLink link
                  && link.getAction() instanceof PDActionURI;
          assertFalse(leads, "a link out of the report");
        }
      }
      String text = new PDFTextStripper().getText(document).replaceAll("\\s", "");
      assertTrue(text.contains("<b>bold"), "markup as text");
      assertFalse(text.contains("\u202E"), "an override of direction");
    }
    String raw = new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1);
    for (String action : List.of("/JavaScript", "/Launch", "/SubmitForm", "/EmbeddedFile")) {
      assertFalse(raw.contains(action), action);
    }
  }

  private static void assertNothingOfTheSecret(Path out) throws IOException {
    try (Stream<Path> all = Files.walk(out)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        assertFalse(text.contains(SECRET), file.toString());
        boolean sidecar = file.toString().endsWith(".xmp");
        assertFalse(sidecar && text.contains("<!"), file + " declares something");
      }
    }
  }

  /**
   * The system's own record of a whole run, its workers included: nothing is sent to, or awaited
   * from, an internet address. (Java itself tries whether sockets can be made.)
   */
  @Test
  void noProcessSpeaksToAnInternetAddress() throws Exception {
    assumeTrue(traces(), "skipped: needs strace");
    SmallNight.copy(OutputFormat.JPEG, 1, home.resolve("night/frame.jpg"));
    Path trace = home.resolve("trace.txt");
    String[] strace = {
      "strace",
      "-f",
      "--seccomp-bpf",
      "-o",
      trace.toString(),
      "-e",
      "trace=connect,bind,listen,sendto,sendmsg,sendmmsg,execve"
    };
    Run run =
        ChildRun.in(home)
            .through(strace)
            .start("report", "--workers", 1, "--entries", "none", "--out", "out", "night")
            .end();
    assertEquals(0, run.code(), run.err());
    String calls = Files.readString(trace);
    assertTrue(calls.contains("rondure.crew.WorkerMain"), "the worker was watched too");
    assertFalse(calls.contains("AF_INET"), calls);
  }

  private static boolean traces() throws InterruptedException {
    try {
      Process process =
          new ProcessBuilder("strace", "-f", "--seccomp-bpf", "-o", "/dev/null", "true").start();
      return process.waitFor() == 0;
    } catch (IOException absent) {
      return false;
    }
  }
}
