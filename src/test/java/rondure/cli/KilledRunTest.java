package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/**
 * SIGKILL at any moment, then the same command again: the bytes of an undisturbed run, no worker
 * that lives on, no lock that stands in the way, no work folder that stays.
 */
class KilledRunTest {
  private static final int FRAMES = 8;
  private static final int RANDOM_MOMENTS = 20;
  private static final int KILLED = 137;

  @TempDir Path home;

  @BeforeAll
  static void signalsAreThoseOfUnix() {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "skipped: no system with signals");
  }

  /** Frames of different bytes: what follows the picture in a TIFF file is not looked at. */
  private Path night() throws IOException {
    Path night = home.resolve("night");
    for (int i = 1; i <= FRAMES; i++) {
      Path frame = night.resolve("frame" + i + ".tif");
      SmallNight.copy(OutputFormat.TIFF, 1 + i % SmallNight.FRAMES, frame);
      Files.write(frame, new byte[] {(byte) i}, StandardOpenOption.APPEND);
    }
    return night;
  }

  private ChildRun started(Path out) throws IOException {
    return ChildRun.in(home).start("report", "--workers", 2, "--out", out, home.resolve("night"));
  }

  /** Runs to the end; answers with what it said. */
  private String finished(Path out) throws IOException, InterruptedException {
    ChildRun child = started(out);
    Run run = child.end();
    assertEquals(0, run.code(), run.toString());
    assertEquals("", run.err());
    assertEquals(List.of(), withoutFonts(child.temporaryFiles()));
    return run.out();
  }

  /** Without the copies of fonts that Java leaves when it is killed while it writes a report. */
  private static List<String> withoutFonts(List<String> temporaryFiles) {
    return temporaryFiles.stream().filter(name -> !name.startsWith("+~JF")).toList();
  }

  /**
   * Kills a run at a moment.
   *
   * @return false when it was over before
   */
  private boolean killed(Path out, Function<ChildRun, BooleanSupplier> moment) throws Exception {
    ChildRun child = started(out);
    child.await(moment.apply(child));
    List<ProcessHandle> workers = child.signal("KILL");
    int code = child.end().code();
    for (ProcessHandle worker : workers) {
      worker.onExit().get(20, TimeUnit.SECONDS);
    }
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (processesOfOurs() > 0) {
      assertTrue(System.nanoTime() < deadline, "a worker lives on");
      Thread.sleep(20);
    }
    assertTrue(code == KILLED || code == 0, "exit code " + code);
    return code == KILLED;
  }

  /** Workers know the temporary folder of their run; a system may hide command lines. */
  private long processesOfOurs() {
    String place = home.resolve("tmp").toString();
    return ProcessHandle.allProcesses()
        .filter(one -> one.info().commandLine().orElse("").contains(place))
        .count();
  }

  @Test
  void aRunThatWasKilledAgainAndAgainGoesOnToTheSameBytes() throws Exception {
    night();
    Path expected = home.resolve("expected");
    finished(expected);
    Path out = home.resolve("out");
    assertTrue(killed(out, child -> () -> Files.exists(out.resolve(".rondure-lock"))));
    assertTrue(killed(out, child -> () -> Records.in(out) > 0));
    int kept = Records.in(out);
    assertTrue(kept > 0 && kept < FRAMES, kept + " records");
    assertTrue(killed(out, child -> () -> Records.in(out) > kept));
    assertTrue(killed(out, child -> () -> Files.exists(out.resolve(".rondure-partial"))));
    String said = finished(out);
    assertTrue(said.contains("Of 8 frames, 8 were measured before."), said);
    Outputs.assertSame(Outputs.of(expected), out);
    assertEquals(FRAMES, Records.in(out));
  }

  /** Moments drawn over the whole length of a run, each for a folder of its own. */
  @Test
  @Tag("thorough")
  void aRunThatWasKilledAtAnyMomentGoesOnToTheSameBytes() throws Exception {
    night();
    Path expected = home.resolve("expected");
    long begunNanos = System.nanoTime();
    finished(expected);
    long lengthNanos = System.nanoTime() - begunNanos;
    Random random = new Random(20261125);
    int kills = 0;
    for (int i = 0; i < RANDOM_MOMENTS; i++) {
      Path out = home.resolve("out" + i);
      long startNanos = System.nanoTime();
      long moment = startNanos + (long) (random.nextDouble() * lengthNanos);
      boolean inTime =
          killed(out, child -> () -> child.isOver() || System.nanoTime() - moment >= 0);
      int kept = Records.in(out);
      kills += inTime ? 1 : 0;
      lengthNanos = inTime ? lengthNanos : System.nanoTime() - startNanos;
      String said = finished(out);
      assertEquals(kept > 0, said.contains("measured before"), said);
      Outputs.assertSame(Outputs.of(expected), out);
      System.out.printf("moment %d: killed %b, %d records kept%n", i, inTime, kept);
    }
    assertTrue(kills >= RANDOM_MOMENTS / 2, kills + " runs were killed in time");
  }
}
