package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The results in an output folder. */
final class Outputs {
  private static final List<String> ALWAYS =
      List.of("report.pdf", "night.json", "frames.csv", "keep.txt", "run.log");

  private Outputs() {}

  /** All results by name. */
  static Map<String, byte[]> of(Path out) throws IOException {
    Map<String, byte[]> results = new TreeMap<>();
    for (String name : ALWAYS) {
      results.put(name, Files.readAllBytes(out.resolve(name)));
    }
    if (Files.exists(out.resolve("stars.csv.gz"))) {
      results.put("stars.csv.gz", Files.readAllBytes(out.resolve("stars.csv.gz")));
    }
    return results;
  }

  /** Fails unless all results of two runs are the same, byte for byte. */
  static void assertSame(Map<String, byte[]> expected, Path out) throws IOException {
    Map<String, byte[]> results = of(out);
    assertEquals(expected.keySet(), results.keySet());
    results.forEach(
        (name, bytes) ->
            assertEquals(-1, Arrays.mismatch(expected.get(name), bytes), name + " differs"));
  }
}
