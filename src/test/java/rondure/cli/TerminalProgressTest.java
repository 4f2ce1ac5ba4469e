package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.RunStart;

class TerminalProgressTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private final Terminal terminal = new Terminal(new PrintWriter(out), new PrintWriter(err));
  private final ByteArrayOutputStream drawn = new ByteArrayOutputStream();
  private long nanos;

  private TerminalProgress progress(boolean onScreen) {
    PrintStream screen = new PrintStream(drawn, true, StandardCharsets.UTF_8);
    return new TerminalProgress(
        terminal, onScreen ? Optional.of(screen) : Optional.empty(), () -> nanos);
  }

  private void stage(TerminalProgress progress, int steps, double secondsPerStep) {
    progress.begin("Measuring stars", steps);
    for (int i = 0; i < steps; i++) {
      nanos += Math.round(secondsPerStep * 1e9);
      progress.step();
    }
    progress.end();
  }

  private String shown() {
    return drawn.toString(StandardCharsets.UTF_8);
  }

  @Test
  void longWorkHasABarThatEndsWithItsLastStep() {
    stage(progress(true), 20, 0.5);
    assertTrue(shown().contains("Measuring stars"), shown());
    assertTrue(shown().contains("20/20"), shown());
    assertTrue(shown().endsWith("\n"), "the next line begins on a line of its own");
  }

  @Test
  void shortWorkHasNone() {
    stage(progress(true), 20, 0.05);
    stage(progress(true), 0, 1);
    assertEquals("", shown());
  }

  @Test
  void nothingIsDrawnWhereThereIsNoScreen() {
    stage(progress(false), 20, 0.5);
    stage(progress(false), 1, 5);
    assertEquals("", shown() + out + err);
  }

  @Test
  void aSingleStepIsAnnounced() {
    stage(progress(true), 1, 5);
    assertEquals("Measuring stars ..." + System.lineSeparator(), shown());
  }

  @Test
  void troublesGoToStandardErrorAndTheStartToStandardOutput() {
    TerminalProgress progress = progress(false);
    progress.say("a.tif: \u001B[31mred");
    progress.start(new RunStart(2, 0, 1, Map.of("TIFF", 2), 48, 1));
    assertEquals(List.of("a.tif: ?[31mred"), err.toString().lines().toList());
    assertEquals(
        List.of(
            "2 frames in 1 folder (2 TIFF).",
            "This should take less than a minute (48 megapixels, 1 worker, reckoned at 20"
                + " megapixels a second for each)."),
        out.toString().lines().toList());
  }

  /** The measured runs of docs/performance.md, on the same two cores, within a third. */
  @Test
  void theExpectedTimeIsThatOfTheRunsThatWereMeasured() {
    RunStart heavy = new RunStart(50, 0, 1, Map.of("RAW", 50), 50 * 24, 2);
    assertEquals(34, heavy.expectedSeconds(), 34 / 3.0);
    RunStart many = new RunStart(2000, 0, 1, Map.of("TIFF", 2000), 2000 * 0.96, 2);
    assertEquals(150, many.expectedSeconds(), 150 / 3.0);
    assertTrue(StartWords.of(many).get(1).startsWith("This should take about 3 minutes"));
  }

  @Test
  void theStartTellsWhatWasMeasuredBeforeAndReckonsWithTheRest() {
    RunStart resumed = new RunStart(2000, 1990, 1, Map.of("TIFF", 2000), 2000 * 0.96, 2);
    List<String> words = StartWords.of(resumed);
    assertEquals("Of 2000 frames, 1990 were measured before.", words.get(1));
    assertTrue(words.get(2).startsWith("This should take less than a minute"), words.get(2));
    RunStart small = new RunStart(10, 0, 1, Map.of("TIFF", 10), 10 * 0.96, 2);
    assertEquals(small.expectedSeconds(), resumed.expectedSeconds(), 1e-9);
    assertThrows(
        IllegalArgumentException.class, () -> new RunStart(2, 3, 1, Map.of("TIFF", 2), 2, 1));
  }
}
