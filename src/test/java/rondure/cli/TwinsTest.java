package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;
import rondure.testing.LibRaw;

/** RAW and JPEG of one exposure: the RAW is measured, the JPEG where the RAW cannot be read. */
class TwinsTest {
  @TempDir Path home;

  private Path nightWithTwins() throws IOException {
    Path night = home.resolve("night");
    SmallNight.copy(OutputFormat.DNG, 1, night.resolve("a.dng"));
    SmallNight.copy(OutputFormat.JPEG, 1, night.resolve("a.jpg"));
    SmallNight.copy(OutputFormat.DNG, 2, night.resolve("b.dng"));
    SmallNight.copy(OutputFormat.TIFF, 3, night.resolve("c.tif"));
    return night;
  }

  @Test
  void theRawIsMeasuredAndItsTwinListedAsACopy() throws IOException {
    LibRaw.isThere();
    Path out = home.resolve("out");
    Run run = Run.report(out, nightWithTwins());
    assertEquals(0, run.code(), run.err());
    Map<String, JsonNode> frames = Run.frames(out);
    assertEquals(List.of("a.dng", "b.dng", "c.tif"), List.copyOf(frames.keySet()));
    assertEquals("sensor", frames.get("a.dng").get("pixels").asText());
    JsonNode copies = Run.night(out).get("copies");
    assertEquals("a.dng", copies.get(0).get("file").asText());
    assertEquals("a.jpg", copies.get(0).get("copies").get(0).asText());
    assertTrue(run.out().contains("3 frames in 1 folder (2 RAW, 1 TIFF, 1 JPEG)"), run.out());
  }

  @Test
  void theTwinOfADamagedRawIsMeasuredAndTheReportSaysSo() throws IOException {
    Path night = nightWithTwins();
    byte[] raw = Files.readAllBytes(night.resolve("a.dng"));
    Files.write(night.resolve("a.dng"), Arrays.copyOf(raw, raw.length / 2));
    Files.delete(night.resolve("b.dng"));
    Path out = home.resolve("out");
    Run run = Run.report(out, night);
    assertEquals(0, run.code(), run.err());
    JsonNode twin = Run.frames(out).get("a.jpg");
    assertEquals("measured", twin.get("status").asText());
    assertEquals("developed", twin.get("pixels").asText());
    String notes = Run.night(out).get("notes").toString();
    assertTrue(notes.contains("a.dng could not be read ("), notes);
    assertTrue(notes.contains("); its copy a.jpg was measured instead."), notes);
    assertTrue(run.err().contains("its copy a.jpg was measured instead."), run.err());
  }

  @Test
  void withoutLibRawEverythingButRawIsMeasuredAndThePackageIsNamed() throws Exception {
    Path out = home.resolve("out");
    Run run =
        ChildRun.in(home)
            .javaOption("-Drondure.libraw=" + home.resolve("no-such-library"))
            .start("report", "--workers", 1, "--entries", "none", "--out", out, nightWithTwins())
            .end();
    assertEquals(1, run.code(), run.err());
    Map<String, JsonNode> frames = Run.frames(out);
    assertEquals(List.of("a.jpg", "b.dng", "c.tif"), List.copyOf(frames.keySet()));
    assertEquals("measured", frames.get("a.jpg").get("status").asText());
    assertEquals("measured", frames.get("c.tif").get("status").asText());
    JsonNode alone = frames.get("b.dng");
    assertEquals("unreadable", alone.get("status").asText());
    assertTrue(alone.get("reason").asText().contains("LibRaw, which was not found"));
    if (System.getProperty("os.name").equals("Linux")) {
      assertTrue(run.errLines().get(0).contains("install the package libraw-bin"), run.err());
    }
    assertEquals(3, run.errLines().size(), run.err());
    for (String name : Run.names(out)) {
      if (!name.equals("report.pdf") && !name.equals("measured")) {
        String text = Files.readString(out.resolve(name));
        assertTrue(!text.contains("no-such-library"), name + " holds a path of this computer");
      }
    }
  }
}
