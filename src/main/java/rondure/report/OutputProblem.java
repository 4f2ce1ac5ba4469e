package rondure.report;

/** The output folder cannot be used: which, why, and what to do, in one sentence. */
public final class OutputProblem extends Exception {
  private static final long serialVersionUID = 1L;

  public OutputProblem(String message) {
    super(message);
  }

  public OutputProblem(String message, Throwable cause) {
    super(message, cause);
  }
}
