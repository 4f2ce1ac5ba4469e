package rondure.cli;

/** What the commands answer to the system. */
final class ExitCode {
  static final int DONE = 0;

  /** Some frames could not be read, or not be explained. */
  static final int NOT_ALL = 1;

  static final int BAD_COMMAND = 2;
  static final int NO_REPORT = 3;

  /** 128 and the number of the signal of Ctrl-C, as shells have it. */
  static final int STOPPED = 130;

  private ExitCode() {}
}
