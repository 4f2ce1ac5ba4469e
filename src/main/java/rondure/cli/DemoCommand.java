package rondure.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rondure.CommandProblem;
import rondure.sim.Demo;

/** Renders the sample night. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = "Renders the sample night into a new folder.")
final class DemoCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "a new or empty folder")
  private Path directory;

  @Override
  public Integer call() throws CommandProblem {
    try {
      Demo.run(directory, Terminal.of(spec.commandLine())::tell);
      return ExitCode.DONE;
    } catch (IOException e) {
      throw Troubles.of(directory, e);
    } catch (IllegalArgumentException e) {
      throw new CommandProblem(e.getMessage());
    }
  }
}
