package rondure.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rondure.sim.OutputFormat;
import rondure.sim.Recipe;
import rondure.sim.SimRun;

/** Renders a night from a recipe. */
@Command(name = "sim", description = "Renders a night from a recipe, with its truth.")
final class SimCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECIPE", description = "a recipe file (JSON)")
  private Path recipe;

  @Parameters(paramLabel = "DIR", description = "a new or empty folder")
  private Path directory;

  @Option(names = "--format", defaultValue = "TIFF", description = "TIFF, JPEG or DNG")
  private OutputFormat format;

  @Override
  public Integer call() {
    try {
      SimRun.run(Recipe.read(recipe), directory, format, System.out::println);
      return 0;
    } catch (IOException | IllegalArgumentException e) {
      System.err.println(e.getMessage());
      return 2;
    }
  }
}
