package rondure.cli;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;
import rondure.CommandProblem;
import rondure.base.FileTrouble;
import rondure.report.OutputProblem;

/** Every way in which a command can fail: one sentence and an exit code for each. */
final class Troubles implements IParameterExceptionHandler, IExecutionExceptionHandler {
  static final String STOPPED = "Stopped; no half-written results were left behind.";

  private final Stopping stopping;

  Troubles(Stopping stopping) {
    this.stopping = stopping;
  }

  /** A command that cannot be followed: what is wrong, what it looks like, where help is. */
  @Override
  public int handleParseException(ParameterException trouble, String[] arguments) {
    CommandLine command = trouble.getCommandLine();
    Terminal terminal = Terminal.of(command);
    terminal.warn(trouble.getMessage());
    UnmatchedArgumentException.printSuggestions(trouble, command.getErr());
    if (command.getSubcommands().isEmpty()) {
      String name = command.getCommandSpec().qualifiedName();
      terminal.warn("\"" + name + " --help\" shows how it is used.");
    } else {
      command.usage(command.getErr());
    }
    return ExitCode.BAD_COMMAND;
  }

  /** A command that could not be carried out. */
  @Override
  public int handleExecutionException(
      Exception trouble, CommandLine command, ParseResult arguments) {
    Terminal terminal = Terminal.of(command);
    boolean stopped =
        trouble instanceof InterruptedException || trouble instanceof InterruptedIOException;
    if (stopped || stopping.begun()) {
      terminal.warn(STOPPED);
      return ExitCode.STOPPED;
    }
    if (trouble instanceof CommandProblem || trouble instanceof OutputProblem) {
      terminal.warn(trouble.getMessage());
      return ExitCode.BAD_COMMAND;
    }
    terminal.warn("No report could be made: " + words(trouble));
    return ExitCode.NO_REPORT;
  }

  /** The trouble of a command that writes into a folder. */
  static CommandProblem of(Path folder, IOException trouble) {
    boolean bySystem = trouble instanceof FileSystemException;
    String words = FileTrouble.words(trouble);
    return new CommandProblem(bySystem ? folder + " cannot be used (" + words + ")." : words);
  }

  private static String words(Exception trouble) {
    return trouble instanceof IOException failure
        ? FileTrouble.words(failure)
        : "a fault of this program (" + trouble + "); please report it.";
  }
}
