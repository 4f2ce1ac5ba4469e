package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** The results in an output folder. */
final class Outputs {
  private static final List<String> ALWAYS =
      List.of("report.pdf", "night.json", "frames.csv", "keep.txt", "run.log");

  private Outputs() {}

  /** Fails unless all results of two runs are the same, byte for byte. */
  static void assertSame(Path one, Path two) throws IOException {
    assertEquals(Run.names(one), Run.names(two));
    for (String name : ALWAYS) {
      assertSameFile(name, one, two);
    }
    if (Files.exists(one.resolve("stars.csv.gz"))) {
      assertSameFile("stars.csv.gz", one, two);
    }
  }

  private static void assertSameFile(String name, Path one, Path two) throws IOException {
    byte[] first = Files.readAllBytes(one.resolve(name));
    byte[] second = Files.readAllBytes(two.resolve(name));
    assertEquals(-1, Arrays.mismatch(first, second), name + " differs");
  }
}
