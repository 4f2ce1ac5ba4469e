package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.sim.OutputFormat;
import rondure.testing.LibRaw;

/** Sidecars by the whole command. */
class SidecarRunTest {
  private static final List<String> DATA =
      List.of("report.pdf", "night.json", "frames.csv", "keep.txt", "run.log");

  private static final String RATED =
      """
      <x:xmpmeta xmlns:x='adobe:ns:meta/'>
      <rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>
      <rdf:Description rdf:about='' xmlns:xmp='http://ns.adobe.com/xap/1.0/' xmp:Rating='3'/>
      </rdf:RDF></x:xmpmeta>
      """;

  @TempDir Path home;

  private static Map<String, String> state(Path folder) throws IOException {
    Map<String, String> state = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String bytes = Integer.toString(Arrays.hashCode(Files.readAllBytes(file)));
        String name = folder.relativize(file).toString();
        state.put(name, Files.size(file) + " " + bytes + " " + Files.getLastModifiedTime(file));
      }
    }
    return state;
  }

  private static List<String> kept(Path out) throws IOException {
    return Files.readAllLines(out.resolve("keep.txt"));
  }

  @Test
  void keptFramesGetSidecarsAndASecondRunChangesNothing() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 3);
    Path plain = home.resolve("plain");
    assertEquals(0, Run.report(plain, night).code());
    Map<String, String> pictures = state(night);
    Path out = home.resolve("out");
    Run run = Run.report(out, "--sidecars", "--sidecars-beside", night);
    assertEquals(0, run.code(), run.err());
    List<String> expected =
        kept(out).stream().map(name -> name.replace(".tif", ".xmp")).sorted().toList();
    assertFalse(expected.isEmpty());
    assertEquals(expected, Run.names(out.resolve("sidecars")));
    Map<String, String> once = state(night);
    assertTrue(once.entrySet().containsAll(pictures.entrySet()), "a picture changed");
    assertEquals(pictures.size() + expected.size(), once.size());
    int count = expected.size();
    assertTrue(
        run.out().contains("Sidecars: " + count + " in the results, " + count + " new beside the"),
        run.out());
    assertTrue(run.out().contains("only for proprietary RAW"), run.out());
    assertTrue(run.out().contains("keep.txt"), run.out());
    assertSameData(plain, out);

    Map<String, String> sidecars = contents(out.resolve("sidecars"));
    Run again = Run.report(out, "--sidecars", "--sidecars-beside", night);
    assertEquals(0, again.code(), again.err());
    assertEquals(once, state(night));
    assertEquals(sidecars, contents(out.resolve("sidecars")));
    assertSameData(plain, out);
    assertTrue(again.out().contains(count + " right already"), again.out());
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    for (String name : Run.names(folder)) {
      contents.put(name, Files.readString(folder.resolve(name)));
    }
    return contents;
  }

  private static void assertSameData(Path one, Path two) throws IOException {
    for (String file : DATA) {
      assertEquals(-1, Files.mismatch(one.resolve(file), two.resolve(file)), file + " differs");
    }
  }

  /** Once for each file, however often it was met with; the rest of the log is that of any run. */
  @Test
  void sidecarsThatWereLeftAloneAreInTheLog() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 3);
    Path plain = home.resolve("plain");
    assertEquals(0, Run.report(plain, night).code());
    Files.writeString(night.resolve("night_1.xmp"), "no XML");
    Files.createDirectory(night.resolve("night_2.xmp"));
    List<String> sentences =
        List.of(
            "night_1.xmp was left alone: it is no XML that can be read.",
            "night_2.xmp was left alone: it is no file.");
    Files.writeString(night.resolve("night_3.xmp"), RATED);
    List<String> expected = new ArrayList<>(Files.readAllLines(plain.resolve("run.log")));
    sentences.forEach(sentence -> expected.add("Sidecar: " + sentence));
    expected.add("Sidecar: night_3.xmp: rating 3 stays.");
    Path out = home.resolve("out");
    for (int times = 1; times <= 2; times++) {
      Run run = Run.report(out, "--sidecars", "--sidecars-beside", night);
      assertEquals(0, run.code(), run.err());
      assertEquals(sentences, run.errLines());
      assertEquals(expected, Files.readAllLines(out.resolve("run.log")));
      assertEquals(List.of("night_3.xmp"), Run.names(out.resolve("sidecars")));
    }
  }

  @Test
  void theEndTellsTenTroublesAndTheLogAll() throws IOException {
    Path night = home.resolve("night");
    for (int i = 1; i <= 12; i++) {
      Path frame = night.resolve("n" + i + ".tif");
      SmallNight.copy(OutputFormat.TIFF, 1, frame);
      Files.write(frame, new byte[] {(byte) i}, StandardOpenOption.APPEND);
      Files.writeString(night.resolve("n" + i + ".xmp"), "no XML");
    }
    Path out = home.resolve("out");
    Run run = Run.report(out, "--sidecars-beside", night);
    assertEquals(11, run.errLines().size(), run.err());
    assertEquals("So were 2 more; run.log names them all.", run.errLines().get(10));
    List<String> log = Files.readAllLines(out.resolve("run.log"));
    assertEquals(12, log.stream().filter(line -> line.startsWith("Sidecar: ")).count());
  }

  @Test
  void aDryRunSaysWhatWouldChangeAndWritesNothingAtAll() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 2);
    Files.writeString(night.resolve("night_1.xmp"), "no XML");
    Map<String, String> before = state(home);
    Run run = Run.of("report", "--workers", 1, "--sidecars-beside", "--dry-run", night);
    assertEquals(0, run.code(), run.err());
    assertEquals(before, state(home));
    assertEquals(List.of("night"), Run.names(home));
    assertTrue(
        run.out().contains("night_2.xmp: new file; rating 4; new keywords Rondure keep, "),
        run.out());
    assertTrue(run.out().contains("Nothing was written."), run.out());
    assertFalse(run.out().contains("report.pdf"), run.out());
    assertEquals(
        List.of("night_1.xmp was left alone: it is no XML that can be read."), run.errLines());
  }

  /** What is kept is used, what is not is measured and not kept; a damaged record neither way. */
  @Test
  void aDryRunUsesWhatWasMeasuredBeforeAndKeepsNothing() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 2);
    Path out = home.resolve("out");
    assertEquals(0, Run.report(out, night).code());
    SmallNight.copy(OutputFormat.TIFF, 3, night.resolve("night_3.tif"));
    Path damaged = Records.files(out).get(0);
    Files.write(damaged, Arrays.copyOf(Files.readAllBytes(damaged), 1000));
    Files.writeString(out.resolve("measured").resolve("2".repeat(64) + "-1.new"), "RNDF");
    Map<String, String> before = state(home);
    Run run = Run.report(out, "--sidecars-beside", "--dry-run", night);
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().contains("Of 3 frames, 1 was measured before."), run.out());
    assertEquals(before, state(home));
    Run beside = Run.of("report", "--workers", 1, "--sidecars-beside", "--dry-run", night);
    assertFalse(beside.out().contains("measured before"), "the results are elsewhere");
    assertEquals(before, state(home));
  }

  @Test
  void aDryRunIsRefusedWhereTheRunWouldBe() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 1);
    Path foreign = Files.createDirectory(home.resolve("foreign"));
    Files.writeString(foreign.resolve("letter.txt"), "mine");
    Run run = Run.report(foreign, "--sidecars-beside", "--dry-run", night);
    assertEquals(2, run.code());
    assertTrue(run.err().contains("holds files that Rondure did not write"), run.err());
    assertEquals(List.of("letter.txt"), Run.names(foreign));
  }

  @ParameterizedTest
  @ValueSource(strings = {"--dry-run", "--replace-ratings"})
  void anOptionForSidecarsNeedsSidecars(String option) throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 1);
    Run run = Run.of("report", option, night);
    assertEquals(2, run.code());
    assertTrue(run.err().startsWith(option), run.err());
    assertEquals(List.of("night"), Run.names(home));
  }

  @Test
  void aRawAndItsJpegShareOneSidecar() throws IOException {
    LibRaw.isThere();
    Path night = home.resolve("night");
    for (int number = 1; number <= 2; number++) {
      SmallNight.copy(OutputFormat.DNG, number, night.resolve("n" + number + ".dng"));
      SmallNight.copy(OutputFormat.JPEG, number, night.resolve("n" + number + ".jpg"));
    }
    Path out = home.resolve("out");
    assertEquals(0, Run.report(out, "--sidecars-beside", night).code());
    for (Map.Entry<String, JsonNode> frame : Run.frames(out).entrySet()) {
      boolean kept = "keep".equals(frame.getValue().get("grade").asText());
      Path sidecar = night.resolve(frame.getKey().replace(".dng", ".xmp"));
      assertEquals(kept, Files.exists(sidecar), frame.getKey());
    }
    assertFalse(kept(out).isEmpty());
    assertTrue(Run.names(night).stream().noneMatch(name -> name.contains(".jpg.")));
  }

  /** As when a timer starts the command: sidecars get the names of their pictures all the same. */
  @Test
  void sidecarsHaveRightNamesInALocaleThatCannotSpellThem() throws Exception {
    String encoding = System.getProperty("sun.jnu.encoding", "UTF-8");
    assumeTrue(
        Charset.forName(encoding).newEncoder().canEncode("\uD83C\uDF0C"),
        "skipped: the locale's encoding " + encoding + " has no names with all letters");
    String name = "n\u00E4chte \uD83C\uDF0C/\u05DC\u05D9\u05DC\u05D4 100%";
    SmallNight.copy(OutputFormat.TIFF, 1, home.resolve("in/" + name + ".tif"));
    Run run =
        ChildRun.in(home)
            .environment("LC_ALL", "C")
            .start("report", "--out", "out", "--sidecars", "--sidecars-beside", "in")
            .end();
    assertEquals(0, run.code(), run.toString());
    assertTrue(Files.exists(home.resolve("in/" + name + ".xmp")), run.toString());
    assertTrue(Files.exists(home.resolve("out/sidecars/" + name + ".xmp")), run.toString());
  }

  @Test
  void noNameOfASidecarActsOnTheTerminal() throws IOException {
    Path night = home.resolve("night");
    String name = "a\u001B[2Jb\u202Egpj";
    SmallNight.copy(OutputFormat.TIFF, 1, night.resolve(name + ".tif"));
    Files.writeString(night.resolve(name + ".xmp"), "\u001B[31m");
    Run run = Run.report(home.resolve("out"), "--sidecars-beside", night);
    assertEquals(
        List.of("a?[2Jb?gpj.xmp was left alone: it is no XML that can be read."), run.errLines());
  }
}
