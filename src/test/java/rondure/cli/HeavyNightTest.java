package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.bench.HeavyFrame;
import rondure.testing.WatchedRun;

/**
 * The memory of a whole run: the real command in a process of its own, its resident memory and its
 * workers' as Linux counts them.
 */
@Tag("thorough")
class HeavyNightTest {
  private static final long KB_MAX = 1_000_000;

  @TempDir Path temp;

  @BeforeEach
  void needsProc() {
    assumeTrue(WatchedRun.isPossible(), "needs /proc to see resident memory");
  }

  @Test
  void twoThousandSmallFramesNeedAtMostAGigabyteInTheParent() throws Exception {
    List<Path> frames;
    try (Stream<Path> files = Files.list(Path.of("samples", "night"))) {
      frames = files.filter(file -> file.toString().endsWith(".tif")).sorted().toList();
    }
    WatchedRun run = run(2000, i -> frames.get(i % frames.size()), ".tif");
    assertTrue(run.parentKb() <= KB_MAX, () -> "parent " + run.parentKb() + " kB");
  }

  @Test
  void fiftyFramesOfTwentyFourMegapixelsNeedAtMostAGigabyteInEachWorker() throws Exception {
    Path heavy = Files.createDirectory(temp.resolve("heavy"));
    HeavyFrame.write(heavy);
    WatchedRun run = run(50, i -> heavy.resolve("heavy.dng"), ".dng");
    assertTrue(run.workerKb() <= KB_MAX, () -> "worker " + run.workerKb() + " kB");
    assertTrue(run.parentKb() <= KB_MAX, () -> "parent " + run.parentKb() + " kB");
  }

  /** Runs the command on copies of frames and watches it; every frame must come out measured. */
  private WatchedRun run(int count, IntFunction<Path> frame, String extension) throws Exception {
    Path night = Files.createDirectory(temp.resolve("night"));
    for (int i = 0; i < count; i++) {
      String name = String.format(Locale.ROOT, "frame_%04d%s", i + 1, extension);
      Files.copy(frame.apply(i), night.resolve(name));
    }
    Path out = temp.resolve("out");
    Path log = temp.resolve("log");
    WatchedRun run = WatchedRun.of(List.of("-Xmx600m"), log, "report", night, "--out", out);
    assertEquals(0, run.exitCode(), () -> read(log));
    JsonNode book = new ObjectMapper().readTree(out.resolve("night.json").toFile());
    assertEquals(count, book.get("frames").size());
    book.get("frames").forEach(row -> assertEquals("measured", row.get("status").asText()));
    System.out.printf(
        "%d frames: parent %d kB, worker %d kB%n", count, run.parentKb(), run.workerKb());
    return run;
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return e.toString();
    }
  }
}
