package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.intake.RawSupport;
import rondure.testing.NativeTraps;

/**
 * The workers of the whole command under attack: the frame is listed with the reason, all others
 * are measured, no process lives on, nothing lies about.
 */
class WorkersUnderAttackTest {
  private static final String ADVICE = "; listed but not measured: export it as a 16-bit TIFF";
  private static final int SOUND = 3;

  @TempDir Path home;
  private Path night;
  private Path out;

  @BeforeEach
  void aNight() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "skipped: no system with signals");
    night = SmallNight.tiffs(home.resolve("night"), SOUND);
    out = home.resolve("out");
  }

  /** The faults are those of this version; others may refuse the files in good order. */
  private static void needsTheFaultyLibRaw() {
    boolean faulty =
        RawSupport.status() instanceof RawSupport.Available there
            && there.version().startsWith("0.20.");
    assumeTrue(faulty, "skipped: needs LibRaw 0.20, whose faults these files provoke");
  }

  private ChildRun started(String... javaOptions) throws IOException {
    ChildRun.Builder child = ChildRun.in(home);
    List.of(javaOptions).forEach(child::javaOption);
    return child.start("report", "--workers", 2, "--entries", "none", "--out", out, night);
  }

  /** The run's end: all sound frames measured, the others listed with these reasons. */
  private void assertListed(ChildRun child, Map<String, String> reasons) throws Exception {
    Run run = child.end();
    assertEquals(1, run.code(), run.toString());
    Map<String, JsonNode> frames = new TreeMap<>(Run.frames(out));
    Map<String, String> expected = new TreeMap<>();
    reasons.forEach((name, reason) -> expected.put(name, reason + ADVICE));
    Map<String, String> listed = new TreeMap<>();
    for (String name : reasons.keySet()) {
      JsonNode bad = frames.remove(name);
      assertEquals("unreadable", bad.get("status").asText());
      String reason = bad.get("reason").asText();
      assertTrue(run.errLines().contains(name + ": " + reason), run.err());
      listed.put(name, reason.replace("fault in libc.so.6)", "fault)"));
    }
    assertEquals(expected, listed);
    assertEquals(reasons.size(), run.errLines().size(), run.err());
    assertAllMeasured(SOUND, frames);
    assertNothingLiesAbout(child);
  }

  private static void assertAllMeasured(int count, Map<String, JsonNode> frames) {
    assertEquals(count, frames.size());
    frames.forEach((file, frame) -> assertEquals("measured", frame.get("status").asText(), file));
  }

  private void assertNothingLost(ChildRun child, int count) throws Exception {
    Run run = child.end();
    assertEquals(0, run.code(), run.toString());
    assertEquals(List.of(), run.errLines());
    assertAllMeasured(count, Run.frames(out));
    assertNothingLiesAbout(child);
  }

  /** No log of a crash, no core, nothing beside the pictures. */
  private void assertNothingLiesAbout(ChildRun child) throws IOException {
    assertEquals(List.of(), child.temporaryFiles());
    assertEquals(
        List.of("child-err", "child-out", "night", "out", "tmp"),
        Run.names(home).stream().filter(name -> !name.equals("java")).toList());
    assertTrue(
        Run.names(night).stream().allMatch(name -> name.startsWith("night_") || isTrap(name)));
    assertFalse(Files.exists(out.resolve(".rondure-lock")));
  }

  private static boolean isTrap(String name) {
    return name.startsWith("trap.");
  }

  @Test
  void aNativeCrashInsideLibRawAndADecoderWithoutEndCostTheirFramesOnly() throws Exception {
    needsTheFaultyLibRaw();
    Files.write(night.resolve("trap.cr2"), NativeTraps.crash());
    Path other = Files.createDirectory(night.resolve("trap.d"));
    Files.write(other.resolve("trap.dng"), NativeTraps.hang());
    assertListed(
        started(),
        Map.of(
            "trap.cr2", "the decoder crashed (native fault in libraw_r.so.20) on this file",
            "trap.d/trap.dng", "the decoder came to no end on this file"));
  }

  /**
   * Whatever the signal, tried once more and then listed; a crash by signal leaves a log as well.
   */
  @Tag("thorough")
  @ParameterizedTest
  @CsvSource({
    "KILL, 'the system stopped the decoder on this file, perhaps for lack of memory'",
    "SEGV, 'the decoder crashed (native fault) on this file'"
  })
  void aWorkerThatIsKilledAtAFrameIsReplacedOnceAndTheFrameThenListed(String signal, String reason)
      throws Exception {
    needsTheFaultyLibRaw();
    Files.write(night.resolve("trap.dng"), NativeTraps.hang());
    ChildRun child = started();
    ProcessHandle first = atTheTrap(child);
    signal(signal, first);
    first.onExit().get(20, TimeUnit.SECONDS);
    signal(signal, atTheTrap(child));
    assertListed(child, Map.of("trap.dng", reason));
  }

  @Test
  void workersThatAllDieAtOnceAreReplacedAndNothingIsLost() throws Exception {
    for (int i = SOUND + 1; i <= 12; i++) {
      Path frame = night.resolve("night_" + i + ".tif");
      Files.copy(night.resolve("night_1.tif"), frame);
      Files.write(frame, new byte[] {(byte) i}, StandardOpenOption.APPEND);
    }
    ChildRun child = started();
    child.await(() -> Records.in(out) > 1);
    List<ProcessHandle> workers = child.below();
    assertEquals(2, workers.size());
    signal("KILL", workers.toArray(ProcessHandle[]::new));
    assertNothingLost(child, 12);
  }

  /** Native code cannot be interrupted, but its process ends all the same. */
  @Tag("thorough")
  @Test
  void noWorkerAtItsFrameOutlivesAParentThatIsKilled() throws Exception {
    needsTheFaultyLibRaw();
    Files.write(night.resolve("trap.dng"), NativeTraps.hang());
    ChildRun child = started();
    atTheTrap(child);
    List<ProcessHandle> workers = child.signal("KILL");
    assertEquals(2, workers.size());
    assertEquals(137, child.end().code());
    for (ProcessHandle worker : workers) {
      worker.onExit().get(10, TimeUnit.SECONDS);
    }
  }

  /** The first worker's output is flooded by something else that shares it, once it is at work. */
  @Tag("thorough")
  @Test
  void aWorkerWhoseOutputIsFloodedIsReplacedAndNothingIsLost() throws Exception {
    Path done = home.resolve("java/flooded");
    String flood =
        "if mkdir '" + done + "' 2>/dev/null; then (sleep 1; yes flood | head -c 9000000) & fi";
    ChildRun child = started(OtherJava.in(home.resolve("java"), flood));
    assertNothingLost(child, SOUND);
    assertTrue(Files.exists(done), "nothing was flooded");
  }

  /**
   * Workers that get a small part of the heap that they were to have: room for small frames, and
   * for this one as far as its size tells, but not in one piece beside what is new (40 MiB).
   */
  @Tag("thorough")
  @Test
  void aFullHeapCostsThatFrameOnlyAndIsTriedOnceMoreWithTwiceTheMemory() throws Exception {
    BufferedImage picture = new BufferedImage(3800, 2800, BufferedImage.TYPE_USHORT_GRAY);
    assertTrue(ImageIO.write(picture, "png", night.resolve("trap.png").toFile()));
    String small =
        "for one; do case \"$one\" in -Xmx528m) one=-Xmx72m;; -Xmx1056m) one=-Xmx72m;; esac;"
            + " set -- \"$@\" \"$one\"; shift; done";
    assertListed(
        started(OtherJava.in(home.resolve("java"), small)),
        Map.of("trap.png", "the decoder needed more than 1056 MiB of memory"));
  }

  private static void signal(String name, ProcessHandle... processes)
      throws IOException, InterruptedException {
    for (ProcessHandle process : processes) {
      new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
    }
  }

  /** The worker that is at the trap: all else is measured, and it works on. */
  private ProcessHandle atTheTrap(ChildRun child) throws IOException, InterruptedException {
    child.await(() -> Records.in(out) == SOUND);
    Map<Long, Long> before = new TreeMap<>();
    ProcessHandle[] busy = new ProcessHandle[1];
    child.await(
        () -> {
          for (ProcessHandle worker : child.below()) {
            long used = worker.info().totalCpuDuration().map(t -> t.toMillis()).orElse(0L);
            if (used - before.computeIfAbsent(worker.pid(), pid -> used) > 1500) {
              busy[0] = worker;
            }
          }
          return busy[0] != null;
        });
    return busy[0];
  }
}
