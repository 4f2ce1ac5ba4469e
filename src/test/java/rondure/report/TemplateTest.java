package rondure.report;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.night.NightBook;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;
import rondure.report.layout.TemplateProblem;

class TemplateTest {
  private static final NightBook BOOK = BookFixture.night(2);
  @TempDir Path parent;
  private Path folder;

  @BeforeEach
  void makeFolder() throws IOException {
    folder = Files.createDirectory(parent.resolve("templates"));
  }

  private PdfPages written() throws IOException {
    return PdfPages.of(BOOK, settings(folder));
  }

  private static ReportSettings settings(Path templates) {
    return new ReportSettings(
        PageSize.A4, Voice.STUDENT, Optional.of(templates), Entries.AUTO, 60, "0.1.0", List.of());
  }

  private static String bundled(String name) throws IOException {
    try (InputStream stream = TemplateTest.class.getResourceAsStream("/templates/" + name)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private void put(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  private String problem() {
    return assertThrows(
            TemplateProblem.class,
            () -> PdfReport.write(BOOK, settings(folder), new ByteArrayOutputStream()))
        .getMessage();
  }

  @Test
  void aTemplateOfTheUserGoesBeforeTheProgramsOwn() throws IOException {
    put("course.html", "<div id=\"course\"><h1>My own page of {{charts.0.heading}}</h1></div>");
    put("style.css", bundled("style.css") + "\n.glance { color: #123456; }\n");
    try (PdfPages pages = written()) {
      assertTrue(pages.text().contains("My own page of 14 August 2031: 2 frames"));
      assertTrue(pages.text().contains("The night at a glance"), "others come from the program");
    }
  }

  @Test
  void anUnknownNameIsReportedWithFileLineAndTheNamesThatExist() throws IOException {
    put("entry.html", bundled("entry.html").replace("{{facts}}", "{{fakts}}"));
    String message = problem();
    assertTrue(message.startsWith("entry.html, line 5: found {{fakts}}"), message);
    assertTrue(message.contains("expected") && message.contains("fanWords"), message);
  }

  @Test
  void anElementLeftOpenIsReportedWithFileAndLine() throws IOException {
    put("course.html", "<div id=\"course\">\n<p>one\n<p>two</p>\n</div>");
    String message = problem();
    assertTrue(message.startsWith("course.html, line 4: "), message);
    assertTrue(message.contains("Expected well-formed XHTML"), message);
  }

  @Test
  void aTagLeftOpenIsReportedWithFileAndLine() throws IOException {
    put("course.html", "<div id=\"course\">\n{{#charts}}<p>{{heading}}</p>\n</div>");
    String message = problem();
    assertTrue(message.startsWith("course.html") && message.contains("charts"), message);
    assertTrue(message.contains("line 2"), message);
  }

  @Test
  void aSentenceWithAWrongValueIsReportedWithFileAndLine() throws IOException {
    String words = bundled("wording-student.properties");
    put(
        "wording-student.properties",
        words.replace("course.trailCell = {{trail}}", "course.trailCell = {{tail}}"));
    int line = words.substring(0, words.indexOf("course.trailCell =")).split("\n", -1).length;
    String message = problem();
    assertTrue(message.startsWith("wording-student.properties, line " + line + ": "), message);
    assertTrue(message.contains("trail"), message);
  }

  @Test
  void aMissingSentenceIsReportedByItsKey() throws IOException {
    String words = bundled("wording-student.properties");
    put("wording-student.properties", words.replace("action.NONE = Nothing to do.", ""));
    assertTrue(problem().contains("lacks the key action.NONE"), problem());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "p { color red; } | Found an identifier where : was expected",
        "p { colour: red; } | colour is an unrecognized CSS property",
        "p { color: reddish; } | reddish is not a recognized identifier",
        "p { color: red; } } | Found }",
        "p { color: red; | end of file"
      })
  void aBrokenStyleSheetIsReportedWithFileAndLine(String rule, String fault) throws IOException {
    String sheet = bundled("style.css").stripTrailing() + "\n";
    put("style.css", sheet + rule);
    int line = sheet.split("\n", -1).length;
    assertTrue(problem().startsWith("style.css, line " + line + ": "), problem());
    assertTrue(problem().contains(fault) && problem().contains("Expected CSS"), problem());
  }

  @Test
  void aBrokenStyleInsideAPageIsReportedToo() throws IOException {
    put("course.html", "<div id=\"course\" style=\"color red\"><h1>x</h1></div>");
    assertTrue(problem().contains("identifier where : was expected"), problem());
  }

  @Test
  void aLineOfWordsWithoutAKeyIsReportedWithFileAndLine() throws IOException {
    put("wording-student.properties", "# mine\nreport.title Sharpness\n");
    assertTrue(problem().startsWith("wording-student.properties, line 2: found"), problem());
    assertTrue(problem().contains("expected key = sentence"), problem());
  }

  @Test
  void aSentenceWhoseValueIsNotClosedIsReportedWithFileAndLine() throws IOException {
    put("wording-student.properties", "# mine\nreport.title = Sharpness of {{input\n");
    assertTrue(problem().startsWith("wording-student.properties, line 2: "), problem());
    assertTrue(problem().contains("braces without their partners"), problem());
  }

  @Test
  void aFileThatIsNotUtf8IsReported() throws IOException {
    Files.write(folder.resolve("course.html"), new byte[] {'<', 'p', '>', (byte) 0xE9, '<'});
    assertTrue(problem().equals("course.html: is not UTF-8 text; save it as UTF-8."), problem());
  }

  @Test
  void aFolderThatIsALinkIsTheFolderItLeadsTo() throws IOException {
    put("course.html", "<div id=\"course\"><h1>By a link</h1></div>");
    Path link = Files.createSymbolicLink(parent.resolve("link"), folder);
    try (PdfPages pages = PdfPages.of(BOOK, settings(link))) {
      assertTrue(pages.text().contains("By a link"));
    }
  }

  @Test
  void aLinkedFolderInsideIsNotAWayOut() throws IOException {
    Path outside = Files.createDirectory(parent.resolve("outside"));
    Files.write(outside.resolve("secret.jpg"), new byte[] {1, 2, 3});
    Files.createSymbolicLink(folder.resolve("in"), outside);
    put("course.html", "<div id=\"course\"><img src=\"in/secret.jpg\" alt=\"x\"/></div>");
    assertTrue(problem().contains("in/secret.jpg"), problem());
  }

  /** The templates' language has no code; what other kinds of page could run is not run either. */
  @Test
  void scriptsAreNotRunAndViewsGiveNoMethods() throws IOException {
    put(
        "course.html",
        "<div id=\"course\"><h1>Still</h1><script>document.title = 'run'</script></div>");
    try (PdfPages pages = written()) {
      assertTrue(pages.text().contains("Still") && !pages.text().contains("run'"));
      assertFalse(new String(pages.bytes(), StandardCharsets.ISO_8859_1).contains("/JavaScript"));
    }
    for (String name : List.of("getClass", "class", "charts.getClass.getClassLoader", "hashCode")) {
      put("course.html", "<div id=\"course\"><h1>{{" + name + "}}</h1></div>");
      assertTrue(problem().startsWith("course.html, line 1: found {{"), problem());
    }
  }

  @Test
  void aTemplatesFolderThatIsNotThereIsSaidSo() {
    Path nowhere = folder.resolve("nowhere");
    String message =
        assertThrows(
                TemplateProblem.class,
                () -> PdfReport.write(BOOK, settings(nowhere), new ByteArrayOutputStream()))
            .getMessage();
    assertTrue(message.contains("nowhere is not a folder that can be read"), message);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<img src=\"SECRET\" alt=\"x\"/>",
        "<img src=\"../secret.jpg\" alt=\"x\"/>",
        "<div style=\"background-image: url('SECRET')\">x</div>",
        "<object type=\"image/svg+xml\" data=\"SECRET\" alt=\"x\"></object>",
        "{{> ../../secret}}"
      })
  void aTemplateCannotReadOutsideItsFolder(String element) throws IOException {
    Path secret = parent.resolve("secret.jpg");
    Files.write(secret, BOOK.frames().get(0).measurement().orElseThrow().thumbnail().bytes());
    String uri = secret.toUri().toString();
    put("course.html", "<div id=\"course\"><p>x</p>" + element.replace("SECRET", uri) + "</div>");
    assertFalse(problem().isEmpty());
  }

  @Test
  void aStyleSheetOutsideTheFolderIsRefused() throws IOException {
    Path secret = parent.resolve("secret.css");
    Files.writeString(secret, "body { color: red; }");
    put("page.html", bundled("page.html").replace("style.css", secret.toUri().toString()));
    assertTrue(problem().contains("secret.css"), problem());
  }

  @Test
  void aLinkThatLeadsOutOfTheFolderIsNotFollowed() throws IOException {
    Path outside = parent.resolve("outside.html");
    Files.writeString(outside, "<div id=\"course\">secret</div>");
    Files.createSymbolicLink(folder.resolve("course.html"), outside);
    assertTrue(problem().contains("links out of the templates folder"), problem());
  }

  @Test
  void anEntityCannotReadAFile() throws IOException {
    Path secret = parent.resolve("secret.txt");
    Files.writeString(secret, "the secret");
    put(
        "page.html",
        "<!DOCTYPE html [<!ENTITY s SYSTEM \""
            + secret.toUri()
            + "\">]>\n"
            + bundled("page.html").replace("<body>", "<body>&s;"));
    assertTrue(problem().startsWith("page.html"), problem());
  }

  @Test
  void aTemplateCannotReachTheNetwork() throws IOException {
    AtomicInteger calls = new AtomicInteger();
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          calls.incrementAndGet();
          exchange.sendResponseHeaders(404, -1);
          exchange.close();
        });
    server.start();
    try {
      String address = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
      put("style.css", "@import url(\"" + address + "a.css\");\n" + bundled("style.css"));
      assertTrue(problem().contains("127.0.0.1"), problem());
      put("style.css", bundled("style.css"));
      put("course.html", "<div id=\"course\"><img src=\"" + address + "a.jpg\" alt=\"x\"/></div>");
      assertTrue(problem().contains("127.0.0.1"), problem());
      assertTrue(calls.get() == 0, calls + " calls");
    } finally {
      server.stop(0);
    }
  }

  @Test
  void aPictureTheReportDoesNotHaveIsRefused() throws IOException {
    put(
        "course.html",
        "<div id=\"course\"><object type=\"rondure/picture\" data=\"moon\" alt=\"x\"></object></div>");
    assertTrue(problem().contains("\"moon\""), problem());
  }
}
