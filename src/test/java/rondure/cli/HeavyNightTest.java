package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.bench.HeavyFrame;

/**
 * The memory of a whole run: the real command in a process of its own, its resident memory and its
 * workers' as Linux counts them (VmHWM of proc(5), the largest so far).
 */
@Tag("thorough")
class HeavyNightTest {
  private static final long KB_MAX = 1_000_000;
  private static final long LOOK_MILLIS = 100;

  @TempDir Path temp;
  private long parentKb;
  private long workerKb;

  @BeforeEach
  void needsProc() {
    assumeTrue(Files.exists(Path.of("/proc/self/status")), "needs /proc to see resident memory");
  }

  @Test
  void twoThousandSmallFramesNeedAtMostAGigabyteInTheParent() throws Exception {
    List<Path> frames;
    try (Stream<Path> files = Files.list(Path.of("samples", "night"))) {
      frames = files.filter(file -> file.toString().endsWith(".tif")).sorted().toList();
    }
    run(2000, i -> frames.get(i % frames.size()), ".tif");
    assertTrue(parentKb <= KB_MAX, () -> "parent " + parentKb + " kB");
  }

  @Test
  void fiftyFramesOfTwentyFourMegapixelsNeedAtMostAGigabyteInEachWorker() throws Exception {
    Path heavy = Files.createDirectory(temp.resolve("heavy"));
    HeavyFrame.write(heavy);
    run(50, i -> heavy.resolve("heavy.dng"), ".dng");
    assertTrue(workerKb <= KB_MAX, () -> "worker " + workerKb + " kB");
    assertTrue(parentKb <= KB_MAX, () -> "parent " + parentKb + " kB");
  }

  /** Runs the command on copies of frames and watches it; every frame must come out measured. */
  private void run(int count, IntFunction<Path> frame, String extension) throws Exception {
    Path night = Files.createDirectory(temp.resolve("night"));
    for (int i = 0; i < count; i++) {
      String name = String.format(Locale.ROOT, "frame_%04d%s", i + 1, extension);
      Files.copy(frame.apply(i), night.resolve(name));
    }
    Path out = temp.resolve("out");
    Process command = start(night, out);
    while (!command.waitFor(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
      parentKb = Math.max(parentKb, residentKb(command.toHandle()));
      command.descendants().forEach(worker -> workerKb = Math.max(workerKb, residentKb(worker)));
    }
    assertEquals(0, command.exitValue(), () -> read(temp.resolve("log")));
    JsonNode book = new ObjectMapper().readTree(out.resolve("night.json").toFile());
    assertEquals(count, book.get("frames").size());
    book.get("frames").forEach(row -> assertEquals("measured", row.get("status").asText()));
    System.out.printf("%d frames: parent %d kB, worker %d kB%n", count, parentKb, workerKb);
  }

  private Process start(Path night, Path out) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx600m",
            "-cp",
            System.getProperty("java.class.path"),
            Main.class.getName(),
            "report",
            night.toString(),
            "--out",
            out.toString())
        .redirectErrorStream(true)
        .redirectOutput(temp.resolve("log").toFile())
        .start();
  }

  private static long residentKb(ProcessHandle process) {
    try (Stream<String> lines = Files.lines(Path.of("/proc/" + process.pid() + "/status"))) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException | UncheckedIOException over) {
      return 0;
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return e.toString();
    }
  }
}
