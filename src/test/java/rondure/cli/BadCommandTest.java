package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.report.OutputFolder;

/** Commands that cannot be followed: exit code 2, a sentence that says why, nothing touched. */
class BadCommandTest {
  @TempDir Path home;
  private Path night;

  @BeforeEach
  void smallNight() throws IOException {
    night = SmallNight.tiffs(home.resolve("night"), 1);
  }

  /** One sentence, exit code 2, and no default output folder. */
  private void refused(String sentence, Run run) throws IOException {
    assertEquals(List.of(sentence), run.errLines());
    assertEquals("", run.out());
    assertEquals(2, run.code());
    assertFalse(Run.names(home).stream().anyMatch(name -> name.endsWith("-rondure")));
  }

  private static void badOption(String sentence, Run run) {
    assertEquals(
        List.of(sentence, "\"rondure report --help\" shows how it is used."), run.errLines());
    assertEquals(2, run.code());
  }

  @Test
  void aFolderThatIsNotThereIsNamed() throws IOException {
    Path missing = home.resolve("nihgt");
    refused(missing + " is not there; check the spelling of its name.", Run.of("report", missing));
    refused(
        missing + " is not there; check the spelling of its name.",
        Run.of("report", night, missing));
  }

  @Test
  void aTemporaryFolderThatCannotBeUsedIsNamed() throws Exception {
    Path file = Files.writeString(home.resolve("no folder"), "");
    Run run = ChildRun.in(home).javaOption("-Djava.io.tmpdir=" + file).start("report", night).end();
    refused(
        "The report's fonts cannot be used: no temporary folder can be made in "
            + file
            + "; check its free space and rights.",
        run);
  }

  @Test
  void aFolderWithoutPicturesIsNamedAndNoOutputFolderIsMade() throws IOException {
    Path empty = Files.createDirectory(home.resolve("empty"));
    Files.writeString(empty.resolve("notes.txt"), "cold");
    String sentence =
        empty
            + " holds no pictures that Rondure reads; it reads RAW, DNG, TIFF, PNG, JPEG and FITS"
            + " files.";
    refused(sentence, Run.of("report", empty));
    refused(sentence, Run.of("report", empty, "--out", home.resolve("a/b/c")));
    assertFalse(Files.exists(home.resolve("a")));
  }

  @Test
  void aFocusTestThatCannotBeMeantIsRefused() throws IOException {
    String picture = Run.names(night).get(0);
    refused(
        "--focus-test: there is no picture gone.tif in the folder.",
        Run.of("report", night, "--focus-test", picture, "gone.tif"));
    refused(
        "--focus-test: first and last picture are both " + picture + ".",
        Run.of("report", night, "--focus-test", picture, picture));
  }

  @Test
  void anOutputFolderWithForeignFilesIsNotTouched() throws IOException {
    Path out = Files.createDirectory(home.resolve("out"));
    Files.writeString(out.resolve("letter.txt"), "mine");
    refused(
        out
            + " holds files that Rondure did not write; nothing was touched. Give --out a new or"
            + " empty folder.",
        Run.report(out, night));
    assertEquals(List.of("letter.txt"), Run.names(out));
    Path file = out.resolve("letter.txt");
    refused(file + " is a file, not a folder; give --out another place.", Run.report(file, night));
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void aFolderInUseByAnotherRunIsLeftToIt() throws Exception {
    Path out = home.resolve("out");
    try (OutputFolder other = OutputFolder.named(out)) {
      refused(
          other.path()
              + " is in use by another run; wait for it or name another folder with --out.",
          Run.report(out, night));
    }
    assertFalse(Files.exists(out), "the other run leaves nothing, and so does the refused one");
  }

  @Test
  void aMissingTemplatesFolderIsSaidBeforeTheWorkBegins() throws IOException {
    Path templates = home.resolve("my-templates");
    refused(
        "The templates folder "
            + templates
            + " is not a folder that can be read; give a folder of templates, or none.",
        Run.report(home.resolve("out"), night, "--templates", templates));
  }

  @Test
  void aBrokenTemplateIsSaidBeforeTheWorkBegins() throws IOException {
    Path templates = Files.createDirectory(home.resolve("my-templates"));
    Files.writeString(templates.resolve("method.html"), "<div>{{version}}</p>");
    Run run = Run.report(home.resolve("out"), night, "--templates", templates);
    assertEquals(2, run.code());
    assertTrue(run.err().startsWith("method.html, line 1: "), run.err());
    assertEquals("", run.out());
    assertFalse(Files.exists(home.resolve("out")));
  }

  @ParameterizedTest
  @CsvSource({
    "--page,A5,Invalid value for option '--page': expected one of [A4; LETTER] (case-insensitive)"
        + " but was 'A5'",
    "--workers,0,'workers must be 1 to 256, was 0'",
    "--workers,many,Invalid value for option '--workers': \"many\" is not a whole number",
    "--focal-length,-3,'focal length must be 0.5 to 30000 mm, was -3'",
    "--exposure,0,'exposure must be 0.00001 to 86400 s, was 0'",
    "--aperture,NaN,'aperture must be 0.3 to 1000, was NaN'",
    "--iso,0.5,'ISO must be 1 to 100000000, was 0.5'",
    "--pixel-pitch,4300,'pixel pitch must be 0.2 to 200 µm, was 4300'",
    "--temperature,271,'temperature must be -90 to 70 °C, was 271'",
    "--orientation,9,'orientation must be 1 to 8, was 9'",
    "--screen-side,1000,'--web-side must be at most --screen-side, was 2048 and 1000'",
    "--web-side,12,'--web-side must be 100 to 200000, was 12'",
    "--keep-width,0.5,'--keep-width must be 1 to 100, was 0.5'",
    "--keep-width,1.8,'--keep-width must be at most --aside-width, was 1.8 and 1.6'",
    "--aside-width,NaN,'--aside-width must be 1 to 100, was NaN'",
    "--keep-roundness,1.5,'--keep-roundness must be 0 to 1, was 1.5'",
    "--aside-roundness,0.9,'--aside-roundness must be at most --keep-roundness, was 0.9 and 0.8'",
    "--lens,' ','lens must have a name, was blank'",
    "--clock-shift,1h,'a clock shift is written CAMERA=+hh:mm:ss or CAMERA=-hh:mm:ss, for example"
        + " \"Model X=-01:00:00\" for a clock that was an hour fast; found \"1h\".'",
  })
  void aValueThatMakesNoSenseIsNamedWithWhatWould(String option, String value, String sentence) {
    Run run = Run.of("report", night, "--out", home.resolve("out"), option, value);
    badOption(sentence.replace("A4; ", "A4, "), run);
    assertFalse(Files.exists(home.resolve("out")));
  }

  @Test
  void anUnknownOptionIsNamedWithItsNeighbours() {
    Run run = Run.of("report", night, "--focal", "14");
    assertEquals(2, run.code());
    assertTrue(run.err().startsWith("Unknown option: '--focal'"), run.err());
    assertTrue(run.err().contains("--focal-length"), run.err());
    assertTrue(run.err().contains("--help"), run.err());
  }

  @Test
  void aCommandThatIsMissingOrUnknownShowsTheCommands() {
    for (Run run : List.of(Run.of(), Run.of("rapport", night), Run.of("report"))) {
      assertEquals(2, run.code());
      assertTrue(run.err().contains("report"), run.err());
      assertEquals("", run.out());
    }
  }

  @Test
  void helpAndVersionAreNoTrouble() {
    Run help = Run.of("report", "--help");
    assertEquals(0, help.code());
    for (String text :
        List.of(
            "--exposure=",
            "--out=",
            "--web-side=PX",
            "--keep-width",
            "130",
            "stopped by the user")) {
      assertTrue(help.out().contains(text), text);
    }
    assertEquals("0.1.0", Run.of("--version").out().strip());
  }
}
