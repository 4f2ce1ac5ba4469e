package rondure.base;

/**
 * A bad frame: what is wrong with one file and what to do about it, in one clear sentence without
 * the file's path (the caller knows the file). Recorded by the program; the night goes on.
 */
public final class FrameProblem extends Exception {
  private static final long serialVersionUID = 1L;

  public FrameProblem(String message) {
    super(message);
  }

  public FrameProblem(String message, Throwable cause) {
    super(message, cause);
  }
}
