package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/** Results depend on the pictures and the settings, on nothing else. */
class SameInputSameBytesTest {
  private static final List<String> FILES =
      List.of("report.pdf", "night.json", "frames.csv", "keep.txt", "run.log", "stars.csv.gz");

  @TempDir Path home;

  private Path mixedNight() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 3);
    SmallNight.copy(OutputFormat.JPEG, 4, night.resolve("card/four.jpg"));
    Files.write(night.resolve("card/empty.tif"), new byte[0]);
    Files.writeString(night.resolve("card/diary.jpg"), "Cold.");
    return night;
  }

  private Path run(Path night, String name, int workers) {
    Path out = home.resolve(name);
    Run run = Run.of("report", "--star-table", "--workers", workers, "--out", out, night);
    assertEquals(1, run.code(), run.err());
    return out;
  }

  private static void assertSameBytes(Path one, Path two) throws IOException {
    for (String file : FILES) {
      byte[] first = Files.readAllBytes(one.resolve(file));
      byte[] second = Files.readAllBytes(two.resolve(file));
      assertEquals(-1, Arrays.mismatch(first, second), file + " differs");
    }
  }

  @Test
  void twoRunsAndAnyNumberOfWorkersGiveTheSameBytes() throws IOException {
    Path night = mixedNight();
    Path one = run(night, "one", 1);
    assertSameBytes(one, run(night, "again", 1));
    assertSameBytes(one, run(night, "two", 2));
    theLogHasALineForEveryFrameWithItsFindings(one);
  }

  /** The log tells of each frame what night.json tells. */
  private static void theLogHasALineForEveryFrameWithItsFindings(Path out) throws IOException {
    List<String> log = Files.readAllLines(out.resolve("run.log"));
    assertEquals("Rondure 0.1.0, night", log.get(0));
    for (JsonNode frame : Run.frames(out).values()) {
      String start = frame.get("file").asText() + ": " + frame.get("status").asText();
      List<String> lines = log.stream().filter(line -> line.startsWith(start)).toList();
      assertEquals(1, lines.size(), start);
      String line = lines.get(0);
      if (frame.get("status").asText().equals("measured")) {
        double fwhm = frame.get("fwhmPx").asDouble();
        assertTrue(line.contains(String.format("FWHM %.2f px", fwhm)), line);
        assertTrue(line.contains("cause " + frame.get("cause").asText()), line);
        assertEquals("keep".equals(frame.get("grade").asText()), line.contains("grade keep"), line);
      } else {
        assertTrue(line.endsWith(frame.get("reason").asText()), line);
      }
    }
    for (JsonNode note : Run.night(out).get("notes")) {
      assertTrue(log.contains("Remark: " + note.asText()), note.asText());
    }
  }
}
