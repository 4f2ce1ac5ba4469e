package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/** Files that cannot be read cost themselves only, and say why in one sentence. */
class BadFramesTest {
  private static final String COPY_AGAIN = "copy it again from the card";

  @TempDir Path home;

  private static byte[] firstPart(byte[] bytes, double share) {
    return Arrays.copyOf(bytes, (int) (bytes.length * share));
  }

  private static Map<String, byte[]> badFiles() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("empty.tif", new byte[0]);
    files.put("empty.jpg", new byte[0]);
    files.put("empty.dng", new byte[0]);
    files.put("cut.tif", firstPart(SmallNight.bytes(OutputFormat.TIFF, 1), 0.5));
    files.put("cut.jpg", firstPart(SmallNight.bytes(OutputFormat.JPEG, 1), 0.5));
    files.put("diary.jpg", "Cold. Clouds came at two.\n".repeat(20).getBytes());
    files.put("huge.tif", HugeHeaders.tiff());
    files.put("huge.png", HugeHeaders.png());
    files.put("huge.fits", HugeHeaders.fits());
    files.put("huge.jpg", HugeHeaders.jpeg());
    return files;
  }

  /** What each sentence must say. */
  private static final Map<String, String> SAID =
      Map.of(
          "empty.tif", "the file is empty (0 bytes)",
          "empty.jpg", "the file is empty (0 bytes)",
          "empty.dng", "the file is empty (0 bytes)",
          "cut.tif", COPY_AGAIN,
          "cut.jpg", COPY_AGAIN,
          "diary.jpg", "is named .jpg but holds a text file",
          "huge.tif", "declares 200000 x 200000 px",
          "huge.png", "declares 200000 x 200000 px",
          "huge.fits", "declares 200000 x 200000 px",
          "huge.jpg", "declares 65500 x 65500 px");

  @Test
  void aBadFrameCostsItselfOnly() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 2);
    Map<String, byte[]> bad = badFiles();
    for (Map.Entry<String, byte[]> file : bad.entrySet()) {
      // A folder for each: files of one name in one folder may be copies of one exposure.
      Path folder = Files.createDirectories(night.resolve(file.getKey() + ".d"));
      Files.write(folder.resolve(file.getKey()), file.getValue());
    }
    Path out = home.resolve("out");
    Run run = Run.report(out, night);
    assertEquals(1, run.code(), run.err());
    assertEquals(bad.size(), run.errLines().size(), run.err());
    Map<String, JsonNode> frames = Run.frames(out);
    assertEquals(bad.size() + 2, frames.size());
    for (String name : bad.keySet()) {
      JsonNode frame = frames.get(name + ".d/" + name);
      String reason = frame.get("reason").asText();
      assertEquals("unreadable", frame.get("status").asText(), name);
      assertTrue(reason.contains(SAID.get(name)), name + ": " + reason);
      assertTrue(run.err().contains(name + ".d/" + name + ": " + reason), run.err());
      assertTrue(Files.readString(out.resolve("run.log")).contains(reason));
    }
    for (String good : List.of("night_1.tif", "night_2.tif")) {
      assertEquals("measured", frames.get(good).get("status").asText());
    }
    assertTrue(run.out().contains("12 frames: "), run.out());
    assertTrue(run.out().contains(bad.size() + " unreadable."), run.out());
    assertTrue(Files.size(out.resolve("report.pdf")) > 1000);
    for (Map.Entry<String, byte[]> file : bad.entrySet()) {
      Path original = night.resolve(file.getKey() + ".d").resolve(file.getKey());
      assertEquals(-1, Arrays.mismatch(file.getValue(), Files.readAllBytes(original)));
    }
  }

  @Test
  void contentDecidesWhatAMislabelledPictureIs() throws IOException {
    Path night = Files.createDirectory(home.resolve("night"));
    SmallNight.copy(OutputFormat.JPEG, 1, night.resolve("one.tif"));
    BufferedImage picture =
        ImageIO.read(new ByteArrayInputStream(SmallNight.bytes(OutputFormat.JPEG, 2)));
    assertTrue(ImageIO.write(picture, "png", night.resolve("two.tif").toFile()));
    Path out = home.resolve("out");
    Run run = Run.report(out, night);
    assertEquals(0, run.code(), run.err());
    assertEquals(
        List.of(
            "one.tif is named .tif but holds a JPEG picture; it was read as JPEG.",
            "two.tif is named .tif but holds a PNG picture; it was read as PNG."),
        run.errLines());
    for (JsonNode frame : Run.frames(out).values()) {
      assertEquals("measured", frame.get("status").asText(), frame.toString());
    }
    assertTrue(run.out().contains("(1 PNG, 1 JPEG)"), run.out());
  }

  /** A report is made all the same: it says of each file why. */
  @Test
  void aNightOfBadFramesOnlyHasAReport() throws IOException {
    Path night = Files.createDirectory(home.resolve("night"));
    Files.write(night.resolve("a.tif"), new byte[0]);
    Files.writeString(night.resolve("b.jpg"), "not a picture");
    Path out = home.resolve("out");
    Run run = Run.report(out, night);
    assertEquals(1, run.code(), run.err());
    assertTrue(run.out().contains("2 frames: 2 unreadable."), run.out());
    assertTrue(Files.size(out.resolve("report.pdf")) > 1000);
    assertEquals("", Files.readString(out.resolve("keep.txt")));
    assertEquals(2, Run.frames(out).size());
  }

  @Test
  void manyBadFramesAreNotAllToldOnTheTerminal() throws IOException {
    Path night = Files.createDirectory(home.resolve("night"));
    for (int i = 1; i <= 13; i++) {
      Files.write(night.resolve("frame" + i + ".tif"), new byte[0]);
    }
    Path out = home.resolve("out");
    Run run = Run.report(out, night);
    assertEquals(1, run.code());
    assertEquals(11, run.errLines().size(), run.err());
    assertEquals(
        "3 more files could not be read; run.log says why for each.", run.errLines().get(10));
    assertFalse(run.err().contains("frame13"), run.err());
    assertTrue(Files.readString(out.resolve("run.log")).contains("frame13.tif: unreadable"));
  }
}
