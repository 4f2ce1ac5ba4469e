package rondure.crew;

/**
 * The crew as a whole cannot work: no worker process can be started, or it was closed while at
 * work. One clear sentence: what is wrong and what to do.
 */
public final class CrewProblem extends Exception {
  private static final long serialVersionUID = 1L;

  public CrewProblem(String message) {
    super(message);
  }

  public CrewProblem(String message, Throwable cause) {
    super(message, cause);
  }
}
