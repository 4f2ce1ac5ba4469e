package rondure.report.layout;

import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.LogMessageId.LogMessageId2Param;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What was wrong with the style sheets of a page: the layout would pass over it without a word. */
final class StyleFaults implements Consumer<Diagnostic> {
  private static final Pattern LINE = Pattern.compile(" at line (\\d+)\\..*", Pattern.DOTALL);
  private static final String UNKNOWN_PROPERTY = "unrecognized CSS property";
  private final String pageFile;
  private final List<TemplateProblem> faults = new ArrayList<>();

  StyleFaults(String pageFile) {
    this.pageFile = pageFile;
  }

  @Override
  public void accept(Diagnostic diagnostic) {
    if (diagnostic.getLogMessageId() == LogMessageId2Param.CSS_PARSE_GENERIC_MESSAGE) {
      Object[] told = diagnostic.getArgs();
      faults.add(fault(String.valueOf(told[0]), String.valueOf(told[1])));
    }
  }

  /** Fails when anything was wrong. */
  void checkNone() throws TemplateProblem {
    if (!faults.isEmpty()) {
      throw faults.get(0);
    }
  }

  private TemplateProblem fault(String address, String message) {
    String file = address.replaceFirst("^template:", "");
    Matcher line = LINE.matcher(message);
    boolean sheet = file.endsWith(".css") && line.find();
    String found = LINE.matcher(message).replaceFirst("");
    return new TemplateProblem(
        sheet ? file : pageFile,
        sheet ? lineNumber(line.group(1), found) : 0,
        found + ". Expected CSS 2.1: selector { property: value; }.");
  }

  /** The parser counts the lines of unknown properties from 0, all others from 1. */
  private static int lineNumber(String told, String found) {
    return Integer.parseInt(told) + (found.contains(UNKNOWN_PROPERTY) ? 1 : 0);
  }
}
