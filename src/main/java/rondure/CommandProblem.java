package rondure;

/** A command that cannot be followed: what is wrong and what to do, in one sentence. */
public final class CommandProblem extends Exception {
  private static final long serialVersionUID = 1L;

  public CommandProblem(String message) {
    super(message);
  }
}
