package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.sim.OutputFormat;

/**
 * Ctrl-C at any moment: exit code 130, one sentence, nothing half-written, nothing left running.
 */
class StoppedRunTest {
  private static final int FEW = 3;

  @TempDir Path home;
  private Path night;
  private Path out;

  /** Undoes that a shell may have told everything in the background to ignore Ctrl-C. */
  private static final String[] HEARING = {"env", "--default-signal=INT"};

  @BeforeAll
  static void signalsCanBeSent() {
    assumeTrue(works("env", "--default-signal=INT", "true"), "skipped: no env that resets signals");
    assumeTrue(works("kill", "-l"), "skipped: no kill command");
  }

  private static boolean works(String... command) {
    try {
      ProcessBuilder quiet = new ProcessBuilder(command).redirectErrorStream(true);
      return quiet.redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor() == 0;
    } catch (IOException | InterruptedException e) {
      return false;
    }
  }

  @BeforeEach
  void places() {
    night = home.resolve("night");
    out = home.resolve("out");
  }

  private void nightOf(int frames) throws IOException {
    for (int i = 1; i <= frames; i++) {
      Path frame = night.resolve("frame" + i + ".tif");
      SmallNight.copy(OutputFormat.TIFF, 1 + i % SmallNight.FRAMES, frame);
    }
  }

  /** Moments of a run, by what can be seen of it from outside. */
  private enum Moment {
    FACTS,
    MEASURED,
    WRITING;

    boolean hasCome(Path out) {
      return switch (this) {
        case FACTS -> Files.exists(out.resolve(".rondure-lock"));
        case MEASURED -> Records.in(out) > 0;
        case WRITING -> Files.exists(out.resolve(".rondure-partial"));
      };
    }
  }

  private ChildRun started() throws IOException {
    return ChildRun.in(home).through(HEARING).start("report", "--workers", 2, "--out", out, night);
  }

  private void stopAt(Moment moment, String signal) throws Exception {
    ChildRun child = started();
    child.await(() -> moment.hasCome(out));
    List<ProcessHandle> workers = child.signal(signal);
    Run run = child.end();
    assertEquals(130, run.code(), run.toString());
    assertEquals(List.of(Troubles.STOPPED), run.errLines());
    for (ProcessHandle worker : workers) {
      worker.onExit().get(10, TimeUnit.SECONDS);
    }
    assertEquals(List.of(), child.temporaryFiles());
  }

  @Test
  void aRunThatIsStoppedBeforeItMeasuredLeavesNothing() throws Exception {
    nightOf(FEW);
    stopAt(Moment.FACTS, "INT");
    assertFalse(Files.exists(out), "left the output folder");
  }

  /** Nothing but what was measured so far, and the next run goes on from there. */
  @ParameterizedTest
  @CsvSource({"INT", "TERM"})
  void aRunThatIsStoppedWhileItMeasuresLeavesItsMeasurements(String signal) throws Exception {
    nightOf(60);
    stopAt(Moment.MEASURED, signal);
    assertEquals(List.of(".rondure-output", "measured"), Run.names(out));
    Run next = Run.report(out, night);
    assertEquals(0, next.code(), next.err());
    assertTrue(next.out().contains(" measured before."), next.out());
  }

  /**
   * The results of an earlier run stay whole, and the next run finds the folder free; what a run
   * leaves that was killed outright, the next one clears.
   */
  @Test
  void aStoppedRunKeepsEarlierResultsAndLetsTheNextRunWork() throws Exception {
    nightOf(FEW);
    Path one = SmallNight.tiffs(home.resolve("one"), 1);
    assertEquals(0, Run.report(out, one).code());
    List<String> names = Run.names(out);
    String json = Files.readString(out.resolve("night.json"));
    stopAt(Moment.WRITING, "INT");
    assertEquals(names, Run.names(out));
    assertEquals(json, Files.readString(out.resolve("night.json")));

    ChildRun killed = started();
    killed.await(() -> Moment.WRITING.hasCome(out));
    killed.signal("KILL");
    assertEquals(137, killed.end().code());
    assertTrue(Run.names(out).contains(".rondure-partial"));
    Run next = Run.report(out, one);
    assertEquals(0, next.code(), next.err());
    assertEquals(names, Run.names(out));
    assertEquals(json, Files.readString(out.resolve("night.json")));
  }
}
