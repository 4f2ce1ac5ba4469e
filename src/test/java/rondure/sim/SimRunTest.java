package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SimRunTest {

  @Test
  void nightIsWrittenTwiceWithTheSameBytes(@TempDir Path folder) throws IOException {
    List<String> lines = new ArrayList<>();
    SimRun.run(Plans.with(), folder.resolve("a"), OutputFormat.JPEG, lines::add);
    SimRun.run(Plans.with(), folder.resolve("b"), OutputFormat.JPEG, line -> {});
    assertEquals(3, lines.size());
    List<String> names =
        List.of("night_0001.jpg", "night_0002.jpg", "night_0003.jpg", "truth.json");
    try (Stream<Path> inside = Files.list(folder.resolve("a"))) {
      assertEquals(names, inside.map(p -> p.getFileName().toString()).sorted().toList());
    }
    for (String name : names) {
      assertArrayEquals(
          Files.readAllBytes(folder.resolve("a").resolve(name)),
          Files.readAllBytes(folder.resolve("b").resolve(name)));
    }
  }

  @Test
  void truthNamesEveryFrameWithItsStars(@TempDir Path folder) throws IOException {
    SimRun.run(Plans.with(), folder.resolve("n"), OutputFormat.TIFF, line -> {});
    JsonNode truth = new ObjectMapper().readTree(folder.resolve("n/truth.json").toFile());
    assertEquals("plain", truth.at("/plan/title").asText());
    assertEquals(3, truth.at("/frames").size());
    assertEquals("night_0002.tif", truth.at("/frames/1/file").asText());
    assertEquals("trailing", truth.at("/frames/1/cause").asText());
    assertTrue(truth.at("/frames/1/stars/0/electrons").asDouble() > 0);
    assertTrue(truth.at("/frames/1/sharesPx2/core").asDouble() > 0.5);
  }

  @Test
  void foreignFolderIsLeftAlone(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("mine.txt"), "mine");
    IOException refusal =
        assertThrows(
            IOException.class,
            () -> SimRun.run(Plans.with(), folder, OutputFormat.TIFF, line -> {}));
    assertTrue(refusal.getMessage().contains("is not empty"));
    assertEquals("mine", Files.readString(folder.resolve("mine.txt")));
    Path file = folder.resolve("mine.txt");
    assertThrows(
        IOException.class, () -> SimRun.run(Plans.with(), file, OutputFormat.TIFF, line -> {}));
  }

  @Test
  void dngOfAMonoCameraMakesNoFolder(@TempDir Path folder) {
    Path night = folder.resolve("night");
    assertThrows(
        IllegalArgumentException.class,
        () -> SimRun.run(Plans.with(), night, OutputFormat.DNG, line -> {}));
    assertFalse(Files.exists(night));
  }
}
