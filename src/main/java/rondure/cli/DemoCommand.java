package rondure.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import rondure.sim.Demo;

/** Renders the sample night. */
@Command(name = "demo", description = "Renders the sample night into a new folder.")
final class DemoCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "a new or empty folder")
  private Path directory;

  @Override
  public Integer call() {
    try {
      Demo.run(directory, System.out::println);
      return 0;
    } catch (IOException | IllegalArgumentException e) {
      System.err.println(e.getMessage());
      return 2;
    }
  }
}
