package rondure.report.layout;

import java.io.IOException;

/** A template that cannot be used: which file, which line, what was found and what was expected. */
public final class TemplateProblem extends IOException {
  private static final long serialVersionUID = 1L;

  public TemplateProblem(String message) {
    super(message);
  }

  /**
   * @param file name of the template inside its folder
   * @param line counted from 1, 0 when unknown
   * @param foundAndExpected what was found there and what was expected
   */
  public TemplateProblem(String file, int line, String foundAndExpected) {
    super((line > 0 ? file + ", line " + line : file) + ": " + foundAndExpected);
  }
}
