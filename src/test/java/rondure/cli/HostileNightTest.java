package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.intake.RawSupport;
import rondure.sim.OutputFormat;
import rondure.testing.Mutator;

/**
 * Whole runs over folders of damaged pictures of every format that is read: every file is accounted
 * for, with a reason where it is not measured, and what is sound beside them is measured.
 */
class HostileNightTest {
  private static final long SEED = 20_261_126;
  private static final List<String> KNOWN =
      List.of("measured", "tooFewStars", "notNight", "trailsIntended", "composite", "unreadable");

  @TempDir Path home;

  @Test
  void damagedFilesAreAccountedFor() throws Exception {
    survive(90, SEED, sound());
  }

  /** {@code -Drondure.hostileFiles=N} sets how many files. */
  @Test
  @Tag("thorough")
  void thousandsOfDamagedFilesAreAccountedFor() throws Exception {
    survive(Integer.getInteger("rondure.hostileFiles", 6000), SEED + 1, sound());
  }

  /** LibRaw itself may fall over a RAW file: the worker dies, the night goes on. */
  @Test
  @Tag("thorough")
  void thousandsOfDamagedRawFilesAreAccountedFor() throws Exception {
    Map<String, byte[]> sound = sound();
    assumeTrue(sound.containsKey("dng"), "needs LibRaw");
    survive(
        Integer.getInteger("rondure.hostileFiles", 6000),
        SEED + 2,
        Map.of("dng", sound.get("dng")));
  }

  private void survive(int count, long seed, Map<String, byte[]> sound) throws Exception {
    Path night = SmallNight.tiffs(home.resolve("night"), 2);
    Mutator mutator = new Mutator(seed);
    for (int i = 0; i < count; i++) {
      String extension = List.copyOf(sound.keySet()).get(i % sound.size());
      // A folder for each: files of one name in one folder may be copies of one exposure.
      Path folder = Files.createDirectories(night.resolve(name(i) + ".d"));
      Files.write(folder.resolve(name(i) + "." + extension), mutator.damaged(sound.get(extension)));
    }
    Path out = home.resolve("out");
    Run run =
        ChildRun.in(Files.createDirectory(home.resolve("child")))
            .start("report", "--workers", 2, "--entries", "none", "--out", out, night)
            .end(60 + 2 * count);
    assertTrue(run.code() == 1 || run.code() == 0, run.code() + ": " + run.err());
    assertAccounted(count, out);
  }

  private void assertAccounted(int count, Path out) throws IOException {
    Map<String, Integer> byStatus = new TreeMap<>();
    Map<String, JsonNode> frames = Run.frames(out);
    JsonNode copies = Run.night(out).get("copies");
    assertEquals(count + 2, frames.size() + copies.size(), "every file by name");
    frames.forEach(
        (file, frame) -> {
          String status = frame.get("status").asText();
          byStatus.merge(status, 1, Integer::sum);
          assertTrue(KNOWN.contains(status), file + ": " + status);
          String reason = frame.path("reason").asText("");
          assertEquals(status.equals("measured"), reason.isEmpty(), file + ": " + reason);
          assertFalse(reason.contains("took longer"), file + ": " + reason);
          assertFalse(reason.contains("Exception"), file + ": " + reason);
        });
    assertEquals("measured", frames.get("night_1.tif").get("status").asText());
    long crashes =
        frames.values().stream()
            .filter(frame -> frame.path("reason").asText("").contains("crash"))
            .count();
    System.out.println(count + " damaged files: " + byStatus + ", crashes " + crashes);
  }

  private static String name(int i) {
    return String.format(Locale.ROOT, "damaged_%05d", i);
  }

  /** One valid file of each format, by extension. */
  private static Map<String, byte[]> sound() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("tif", SmallNight.bytes(OutputFormat.TIFF, 1));
    files.put("jpg", SmallNight.bytes(OutputFormat.JPEG, 1));
    BufferedImage picture =
        ImageIO.read(new ByteArrayInputStream(SmallNight.bytes(OutputFormat.JPEG, 2)));
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(picture, "png", png);
    files.put("png", png.toByteArray());
    files.put("fits", fits(picture));
    if (RawSupport.status() instanceof RawSupport.Available) {
      files.put("dng", SmallNight.bytes(OutputFormat.DNG, 1));
    }
    return files;
  }

  /** 16-bit FITS, rows from below (FITS standard 4.0, sections 3.3 and 4.4). */
  private static byte[] fits(BufferedImage picture) {
    StringBuilder header = new StringBuilder();
    List.of(
            "SIMPLE  =                    T",
            "BITPIX  =                   16",
            "NAXIS   =                    2",
            "NAXIS1  = " + String.format(Locale.ROOT, "%20d", picture.getWidth()),
            "NAXIS2  = " + String.format(Locale.ROOT, "%20d", picture.getHeight()),
            "EXPTIME =                 10.0",
            "DATE-OBS= '2024-03-02T21:30:05'",
            "END")
        .forEach(card -> header.append(String.format(Locale.ROOT, "%-80s", card)));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(String.format(Locale.ROOT, "%-2880s", header).getBytes());
    for (int y = picture.getHeight() - 1; y >= 0; y--) {
      for (int x = 0; x < picture.getWidth(); x++) {
        int counts = 64 * (picture.getRGB(x, y) >> 8 & 0xFF);
        out.write(counts >> 8);
        out.write(counts);
      }
    }
    out.writeBytes(new byte[2880 - out.size() % 2880]);
    return out.toByteArray();
  }
}
