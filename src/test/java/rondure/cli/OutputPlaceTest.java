package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.report.OutputFolder;

/** Where the results of the whole command go. */
class OutputPlaceTest {
  private static final List<String> RESULTS =
      List.of(
          ".rondure-output",
          "frames.csv",
          "keep.txt",
          "measured",
          "night.json",
          "report.pdf",
          "run.log");

  @TempDir Path home;

  private static Run report(Path night) {
    return Run.of("report", "--workers", 1, "--entries", "none", night);
  }

  @Test
  void resultsGoBesideTheInputIntoANumberedFolderWhereTheNameIsTakenAndThereAgain()
      throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 1);
    Path foreign = Files.createDirectory(home.resolve("night-rondure"));
    Files.writeString(foreign.resolve("letter.txt"), "mine");
    Run first = report(night);
    assertEquals(0, first.code(), first.err());
    Path out = home.resolve("night-rondure-2");
    assertEquals(RESULTS, Run.names(out));
    assertTrue(first.out().contains("Report: " + out.resolve("report.pdf")), first.out());
    String json = Files.readString(out.resolve("night.json"));
    Files.writeString(out.resolve("night.json"), "{}");
    Run second = report(night);
    assertEquals(0, second.code(), second.err());
    assertEquals(List.of("night", "night-rondure", "night-rondure-2"), Run.names(home));
    assertEquals(json, Files.readString(out.resolve("night.json")));
    assertEquals(
        List.of("night.json was not as Rondure wrote it, so it was kept as night-yours.json."),
        second.errLines());
    assertEquals("{}", Files.readString(out.resolve("night-yours.json")));
    assertEquals(List.of("letter.txt"), Run.names(foreign));
  }

  /** Earlier results inside the night are no frames of it. */
  @Test
  void resultsInsideTheNightAreSkipped() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 1);
    Path out = night.resolve("results");
    Files.createDirectories(out);
    Files.writeString(out.resolve(OutputFolder.MARKER), "");
    SmallNight.tiffs(out.resolve("more"), 2);
    assertEquals(0, Run.report(out, night).code());
    assertEquals(1, Run.frames(out).size());
    assertFalse(Run.night(out).get("ignoredFiles").has("other"));
  }
}
