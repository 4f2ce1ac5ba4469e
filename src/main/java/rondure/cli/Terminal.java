package rondure.cli;

import java.io.PrintWriter;
import picocli.CommandLine;
import rondure.base.PlainText;

/**
 * Where sentences for the user go. File names come from anywhere, so nothing in a sentence may act
 * on the terminal: see {@link PlainText}.
 */
final class Terminal {
  private final PrintWriter out;
  private final PrintWriter err;

  Terminal(PrintWriter out, PrintWriter err) {
    this.out = out;
    this.err = err;
  }

  static Terminal of(CommandLine command) {
    return new Terminal(command.getOut(), command.getErr());
  }

  /** One line of information, on standard output. */
  void tell(String line) {
    out.println(PlainText.inert(line));
    out.flush();
  }

  /** One line about a trouble, on standard error. */
  void warn(String line) {
    err.println(PlainText.inert(line));
    err.flush();
  }
}
