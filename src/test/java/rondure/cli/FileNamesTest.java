package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/** Folders and files of any name are read, and no name acts on the terminal. */
class FileNamesTest {
  @TempDir Path home;

  private static void assumeNamesOfAllLetters() {
    String encoding = System.getProperty("sun.jnu.encoding", "UTF-8");
    assumeTrue(
        Charset.forName(encoding).newEncoder().canEncode("\uD83C\uDF0C"),
        "skipped: the locale's encoding " + encoding + " has no names with all letters");
  }

  @Test
  void namesWithSpacesEmojiRightToLeftLettersAndDashesAreMeasured() throws IOException {
    assumeNamesOfAllLetters();
    List<String> names =
        List.of(
            "one frame.tif",
            "-rf.tif",
            "--out.tif",
            "@night.tif",
            "nuit \uD83C\uDF0C \u00E9toil\u00E9e.tif",
            "\u05DC\u05D9\u05DC\u05D4.tif",
            "n".repeat(196) + ".tif");
    Path night = home.resolve("@my night \uD83C\uDF0C");
    for (String name : names) {
      SmallNight.copy(OutputFormat.TIFF, 1, night.resolve(name));
    }
    Path out = home.resolve("--out \u05DC");
    Run run = Run.report(out, night);
    assertEquals(0, run.code(), run.err());
    assertEquals(new TreeSet<>(names), Run.frames(out).keySet());
    Run.frames(out).values().forEach(f -> assertEquals("measured", f.get("status").asText()));
    Set<String> kept = new TreeSet<>(Files.readAllLines(out.resolve("keep.txt")));
    assertTrue(names.containsAll(kept) && !kept.isEmpty(), kept.toString());
  }

  /** As when a timer starts the command: names come out right, though no letter can be shown. */
  @Test
  void namesAreKeptInALocaleThatCannotSpellThem() throws Exception {
    assumeNamesOfAllLetters();
    String night = "n\u00E4chte \uD83C\uDF0C";
    String name = night + "/\u00E9t\u00E9/\u05DC\u05D9\u05DC\u05D4 100%.tif";
    SmallNight.copy(OutputFormat.TIFF, 1, home.resolve(name));
    Run run =
        ChildRun.in(home)
            .environment("LC_ALL", "C")
            .start("report", "--workers", 1, "--entries", "none", "--out", "out", ".")
            .end();
    assertEquals(0, run.code(), run.toString());
    assertEquals(Set.of(name), Run.frames(home.resolve("out")).keySet());
    Run named = ChildRun.in(home).environment("LC_ALL", "C").start("report", night).end();
    assertEquals(2, named.code(), named.toString());
    assertTrue(named.err().contains("LC_ALL=C.UTF-8"), named.err());
  }

  /** Escape sequences, line ends and overrides of direction come out as question marks. */
  @Test
  void namesCannotActOnTheTerminal() throws IOException {
    assumeNamesOfAllLetters();
    Path night = Files.createDirectory(home.resolve("night\u001B]0;title\u0007"));
    Files.write(night.resolve("a\u001B[2Jb\nc\rd\u202Egpj.tif"), new byte[0]);
    Files.write(night.resolve("e\u009B31mf\u2028g.tif"), new byte[0]);
    Run run = Run.of("report", "--workers", 1, "--entries", "none", night);
    assertEquals(1, run.code());
    for (String text : List.of(run.out(), run.err(), log(home))) {
      assertTrue(text.chars().allMatch(FileNamesTest::harmless), text);
    }
    assertEquals(2, run.errLines().size(), run.err());
    assertTrue(run.err().contains("a?[2Jb?c?d?gpj.tif: "), run.err());
    assertTrue(run.out().contains("night?]0;title?-rondure"), run.out());
  }

  private static String log(Path home) throws IOException {
    Path folder =
        home.resolve(
            Run.names(home).stream().filter(name -> name.endsWith("-rondure")).findFirst().get());
    return Files.readString(folder.resolve("run.log"));
  }

  private static boolean harmless(int unit) {
    boolean control = Character.isISOControl(unit) && unit != '\n';
    return !control && unit != 0x202E && unit != 0x2028;
  }

  @Test
  void filesGivenByNameAreTheirOwnNight() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 3);
    Path bare = SmallNight.copy(OutputFormat.TIFF, 4, home.resolve("elsewhere/frame"));
    Path out = home.resolve("out");
    Run run = Run.report(out, night.resolve("night_3.tif"), night.resolve("night_1.tif"), bare);
    assertEquals(0, run.code(), run.err());
    assertEquals(Set.of("frame", "night_1.tif", "night_3.tif"), Run.frames(out).keySet());
    assertTrue(run.out().contains("3 frames in 2 folders (3 TIFF)"), run.out());
  }

  @Test
  void foldersWithTheSameFileNamesAreToldApart() throws IOException {
    Path one = SmallNight.tiffs(home.resolve("card1/photos"), 2);
    Path two = home.resolve("card2/photos");
    SmallNight.copy(OutputFormat.TIFF, 3, two.resolve("night_1.tif"));
    SmallNight.copy(OutputFormat.TIFF, 4, two.resolve("night_2.tif"));
    Path out = home.resolve("out");
    Run run = Run.report(out, one, two);
    assertEquals(0, run.code(), run.err());
    assertEquals(
        Set.of(
            "card1/photos/night_1.tif",
            "card1/photos/night_2.tif",
            "card2/photos/night_1.tif",
            "card2/photos/night_2.tif"),
        Run.frames(out).keySet());
  }

  @Test
  void aFolderThatBeginsWithADashStandsAfterTwoDashes() throws IOException {
    Run run = Run.of("report", "--", "-no-such-night");
    assertEquals(2, run.code());
    assertEquals(
        List.of("-no-such-night is not there; check the spelling of its name."), run.errLines());
    assertFalse(Files.exists(Path.of("-no-such-night-rondure")));
  }
}
