package rondure.cli;

import java.io.PrintWriter;
import picocli.CommandLine;

/**
 * Where sentences for the user go. File names come from anywhere, so nothing in a sentence may act
 * on the terminal: see {@link #inert(String)}.
 */
final class Terminal {
  /** Marks and overrides of writing direction (Unicode Standard Annex 9, section 2). */
  private static final String DIRECTIONS = "\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069";

  /** Controls, line ends of Unicode, halves of characters, and marks of direction. */
  private static final String ACTING = "[\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}" + DIRECTIONS + "]";

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
    out.println(inert(line));
    out.flush();
  }

  /** One line about a trouble, on standard error. */
  void warn(String line) {
    err.println(inert(line));
    err.flush();
  }

  /** The text with a question mark for every character that could act on a terminal. */
  static String inert(String text) {
    return text.replaceAll(ACTING, "?");
  }
}
