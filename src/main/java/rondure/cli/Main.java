package rondure.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The program's entry. */
@Command(
    name = "rondure",
    mixinStandardHelpOptions = true,
    version = Main.VERSION,
    description = "Measures the stars of a night's frames and says what softened them.",
    subcommands = {ReportCommand.class, DemoCommand.class, SimCommand.class})
public final class Main {
  static final String VERSION = "0.1.0";

  public static void main(String[] arguments) {
    System.setProperty("java.awt.headless", "true");
    System.exit(new CommandLine(new Main()).execute(arguments));
  }
}
