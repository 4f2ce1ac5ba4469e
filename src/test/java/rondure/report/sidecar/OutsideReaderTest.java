package rondure.report.sidecar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.blur.Cause;
import rondure.night.Grade;

/**
 * Sidecars read by ExifTool, a program with a reader of its own; skipped where it is not installed.
 */
class OutsideReaderTest {
  @TempDir Path home;

  @BeforeAll
  static void isThere() throws InterruptedException {
    boolean works;
    try {
      Process process =
          new ProcessBuilder("exiftool", "-ver")
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      works = process.waitFor() == 0;
    } catch (IOException e) {
      works = false;
    }
    assumeTrue(works, "skipped: exiftool is not installed");
  }

  private static Map<String, JsonNode> read(Path folder) throws IOException, InterruptedException {
    List<String> command =
        List.of("exiftool", "-j", "-G1", "-struct", "-validate", "-warning", "-all", "-ext", "xmp");
    List<String> whole = new ArrayList<>(command);
    whole.add(folder.toString());
    Process process =
        new ProcessBuilder(whole).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    JsonNode files = new ObjectMapper().readTree(process.getInputStream());
    process.waitFor();
    Map<String, JsonNode> byName = new TreeMap<>();
    files.forEach(file -> byName.put(file.get("System:FileName").asText(), file));
    return byName;
  }

  private static List<String> words(JsonNode file) {
    List<String> words = new ArrayList<>();
    file.get("XMP-dc:Subject").forEach(word -> words.add(word.asText()));
    return words.stream().sorted().toList();
  }

  @Test
  void itReadsWhatWeWroteAndWhatOthersWroteBefore() throws Exception {
    Files.writeString(home.resolve("d.xmp"), Packets.rich());
    new GradedNight(home)
        .frame(Grade.KEEP, Cause.NONE, "a.nef")
        .frame(Grade.LOOK_CLOSER, Cause.TRAILING, "b.nef")
        .frame(Grade.SET_ASIDE, Cause.HAZE, "c.nef")
        .frame(Grade.KEEP, Cause.FOCUS, "d.nef")
        .beside();
    Map<String, JsonNode> read = read(home);
    assertEquals(4, read.size());
    for (JsonNode file : read.values()) {
      assertFalse(file.has("ExifTool:Warning"), file.toString());
      assertEquals("XMP", file.get("File:FileType").asText());
    }
    assertEquals(5, read.get("a.xmp").get("XMP-xmp:Rating").asInt());
    assertEquals(
        List.of("Rondure best of scene", "Rondure keep", "Rondure nothing softened"),
        words(read.get("a.xmp")));
    assertEquals(2, read.get("b.xmp").get("XMP-xmp:Rating").asInt());
    assertEquals(List.of("Rondure look closer", "Rondure sky trailing"), words(read.get("b.xmp")));
    assertEquals(1, read.get("c.xmp").get("XMP-xmp:Rating").asInt());
    assertEquals(List.of("Rondure haze or dew", "Rondure set aside"), words(read.get("c.xmp")));
    theForeignPartsAreAllThere(read.get("d.xmp"));
  }

  /** Tag by tag the same as before, but for what the merge is about. */
  @Test
  void itReadsTheSameOfEverythingElseBeforeAndAfter() throws Exception {
    Path folder = Files.createDirectory(home.resolve("merged"));
    Files.writeString(home.resolve("d.xmp"), Packets.rich());
    Files.writeString(folder.resolve("d.xmp"), Packets.rich());
    new GradedNight(folder).frame(Grade.SET_ASIDE, "d.nef").beside(true);
    Map<String, JsonNode> before = foreign(read(home).get("d.xmp"));
    assertTrue(before.size() >= 7, before.toString());
    assertEquals(before, foreign(read(folder).get("d.xmp")));
  }

  /** UTF-16 becomes UTF-8, and says the same to a reader of its own. */
  @Test
  void itReadsTheSameOfUtf16BeforeAndAfter() throws Exception {
    byte[] wide = ("\uFEFF" + Packets.rich()).getBytes(StandardCharsets.UTF_16LE);
    Path folder = Files.createDirectory(home.resolve("merged"));
    Files.write(home.resolve("d.xmp"), wide);
    Files.write(folder.resolve("d.xmp"), wide);
    new GradedNight(folder).frame(Grade.LOOK_CLOSER, "d.nef").beside();
    Map<String, JsonNode> before = foreign(read(home).get("d.xmp"));
    assertTrue(before.size() >= 7, before.toString());
    JsonNode after = read(folder).get("d.xmp");
    assertEquals(before, foreign(after));
    assertEquals(3, after.get("XMP-xmp:Rating").asInt());
    assertTrue(words(after).contains("Milchstra\u00DFe"), after.toString());
  }

  private static Map<String, JsonNode> foreign(JsonNode file) {
    Map<String, JsonNode> tags = new TreeMap<>();
    file.properties().forEach(tag -> tags.put(tag.getKey(), tag.getValue()));
    tags.keySet().removeIf(tag -> !tag.startsWith("XMP-") || tag.startsWith("XMP-x:"));
    tags.keySet().removeAll(List.of("XMP-xmp:Rating", "XMP-dc:Subject", "XMP-rondure:Rating"));
    return tags;
  }

  private static void theForeignPartsAreAllThere(JsonNode file) {
    assertEquals(3, file.get("XMP-xmp:Rating").asInt());
    assertEquals(
        List.of("Milchstra\u00DFe", "Rondure focus", "Rondure island", "Rondure keep", "hut"),
        words(file));
    assertEquals("Ridge", file.get("XMP-dc:Title").asText());
    assertEquals("a & b", file.get("XMP-far:Plain").asText());
    assertTrue(file.has("XMP-far:Empty"), file.toString());
    assertEquals("two\nlines", file.get("XMP-far:Note").asText());
    assertTrue(file.toString().contains("255, 255"), file.toString());
    assertTrue(file.toString().contains("curve"), file.toString());
  }
}
