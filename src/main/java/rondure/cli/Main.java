package rondure.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.TypeConversionException;

/** The program's entry. */
@Command(
    name = "rondure",
    mixinStandardHelpOptions = true,
    version = Main.VERSION,
    description = "Measures the stars of a night's frames and says what softened them.",
    subcommands = {ReportCommand.class, ExposureCommand.class, DemoCommand.class, SimCommand.class})
public final class Main {
  static final String VERSION = "0.1.0";

  public static void main(String[] arguments) {
    System.setProperty("java.awt.headless", "true");
    // Else the Java library keeps pictures in temporary files, which a stopped run leaves behind.
    ImageIO.setUseCache(false);
    Stopping stopping = new Stopping();
    CommandLine command = commandLine(stopping);
    System.exit(stopping.guard(() -> executed(command, arguments)));
  }

  /** The whole command line; names that begin with @ are names. */
  static CommandLine commandLine(Stopping stopping) {
    Troubles troubles = new Troubles(stopping);
    return new CommandLine(new Main())
        .setExpandAtFiles(false)
        .registerConverter(Path.class, Main::path)
        .registerConverter(Double.class, Main::number)
        .registerConverter(double.class, Main::number)
        .registerConverter(Integer.class, Main::wholeNumber)
        .registerConverter(int.class, Main::wholeNumber)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setParameterExceptionHandler(troubles)
        .setExecutionExceptionHandler(troubles);
  }

  private static Path path(String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new TypeConversionException(
          "\""
              + text
              + "\" is no name that can be spelled here; if it holds other letters than ASCII, set"
              + " the locale to UTF-8, for instance LC_ALL=C.UTF-8");
    }
  }

  private static Double number(String text) {
    try {
      return Double.valueOf(text);
    } catch (NumberFormatException e) {
      throw new TypeConversionException(
          "\"" + text + "\" is not a number; write it like 24 or 2.8, without a unit");
    }
  }

  private static Integer wholeNumber(String text) {
    try {
      return Integer.valueOf(text);
    } catch (NumberFormatException e) {
      throw new TypeConversionException("\"" + text + "\" is not a whole number");
    }
  }

  private static int executed(CommandLine command, String[] arguments) {
    try {
      return command.execute(arguments);
    } catch (OutOfMemoryError e) {
      System.err.println(
          "No report could be made: there is not enough memory; give Java more with -Xmx, for"
              + " instance java -Xmx2g -jar rondure.jar.");
      return ExitCode.NO_REPORT;
    }
  }
}
