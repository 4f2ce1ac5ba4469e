package rondure.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rondure.CommandProblem;
import rondure.sim.OutputFormat;
import rondure.sim.Recipe;
import rondure.sim.SimRun;

/** Renders a night from a recipe. */
@Command(
    name = "sim",
    mixinStandardHelpOptions = true,
    description = "Renders a night from a recipe, with its truth.")
final class SimCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "RECIPE", description = "a recipe file (JSON)")
  private Path recipe;

  @Parameters(paramLabel = "DIR", description = "a new or empty folder")
  private Path directory;

  @Option(names = "--format", description = "TIFF (as it is), JPEG or DNG")
  private OutputFormat format = OutputFormat.TIFF;

  @Override
  public Integer call() throws CommandProblem {
    if (!Files.isRegularFile(recipe)) {
      throw new CommandProblem(recipe + " is no file; give the name of a recipe.");
    }
    try {
      SimRun.run(Recipe.read(recipe), directory, format, Terminal.of(spec.commandLine())::tell);
      return ExitCode.DONE;
    } catch (IOException e) {
      throw Troubles.of(directory, e);
    } catch (IllegalArgumentException e) {
      throw new CommandProblem(e.getMessage());
    }
  }
}
