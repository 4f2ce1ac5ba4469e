package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.FileSystemException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import rondure.CommandProblem;
import rondure.report.OutputProblem;

/** Exit codes as the data-files page has them, whatever goes wrong inside. */
class TroublesTest {

  static Stream<Arguments> troubles() {
    return Stream.of(
        Arguments.of(new CommandProblem("Give a folder."), 2, "Give a folder."),
        Arguments.of(new OutputProblem("In use."), 2, "In use."),
        Arguments.of(
            new FileSystemException("/home/someone/out", null, "No space left on device"),
            3,
            "No report could be made: No space left on device"),
        Arguments.of(
            new IOException("no worker starts"), 3, "No report could be made: no worker starts"),
        Arguments.of(
            new IllegalStateException("odd"),
            3,
            "No report could be made: a fault of this program (java.lang.IllegalStateException:"
                + " odd); please report it."),
        Arguments.of(
            new InterruptedException("x"),
            130,
            "Stopped; no half-written results were left behind."),
        Arguments.of(
            new InterruptedIOException("x"),
            130,
            "Stopped; no half-written results were left behind."));
  }

  @ParameterizedTest
  @MethodSource("troubles")
  void everyTroubleHasOneSentenceAndItsExitCode(Exception trouble, int code, String sentence) {
    StringWriter err = new StringWriter();
    CommandLine command = Main.commandLine(new Stopping()).setErr(new PrintWriter(err));
    assertEquals(
        code, new Troubles(new Stopping()).handleExecutionException(trouble, command, null));
    assertEquals(List.of(sentence), err.toString().lines().toList());
  }
}
