package rondure.crew;

import java.util.Optional;

/** A worker died, or had to be ended, before it gave its answer. */
final class WorkerLost extends Exception {
  private static final long serialVersionUID = 1L;

  private static final String ADVICE = "; listed but not measured: export it as a 16-bit TIFF";

  /** How it was lost. */
  enum How {
    CRASHED,
    TIMED_OUT,
    /** It worked and worked. */
    ENDLESS,
    OUT_OF_MEMORY,
    GARBLED,
    STOPPED_BY_SYSTEM,
    ENDED,
    NOT_STARTED
  }

  /** Exit code that {@code -XX:+ExitOnOutOfMemoryError} gives. */
  private static final int EXIT_OUT_OF_MEMORY = 3;

  private static final int EXIT_SIGNAL = 128;
  private static final int SIGILL = 4;
  private static final int SIGABRT = 6;
  private static final int SIGBUS = 7;
  private static final int SIGFPE = 8;
  private static final int SIGKILL = 9;
  private static final int SIGSEGV = 11;

  private final How how;
  private final String detail;

  /**
   * @param detail the number or name that the sentence needs: library, seconds, MiB, exit code
   */
  WorkerLost(How how, String detail) {
    super(how + " " + detail);
    this.how = how;
    this.detail = detail;
  }

  How how() {
    return how;
  }

  /** False when the same file would only take as long once more. */
  boolean mayBeChance() {
    return how != How.ENDLESS;
  }

  /**
   * How a worker was lost that ended by itself.
   *
   * @param exitCode as {@link Process#exitValue()}; 128 + n for signal n
   */
  static WorkerLost byExit(int exitCode, Optional<CrashLog> log, int heapMiB) {
    if (exitCode == EXIT_OUT_OF_MEMORY || log.map(CrashLog::outOfMemory).orElse(false)) {
      return new WorkerLost(How.OUT_OF_MEMORY, Integer.toString(heapMiB));
    }
    if (log.isPresent()) {
      return new WorkerLost(How.CRASHED, log.get().library().map(l -> " in " + l).orElse(""));
    }
    return switch (exitCode - EXIT_SIGNAL) {
      case SIGILL, SIGABRT, SIGBUS, SIGFPE, SIGSEGV -> new WorkerLost(How.CRASHED, "");
      case SIGKILL -> new WorkerLost(How.STOPPED_BY_SYSTEM, "");
      default -> new WorkerLost(How.ENDED, Integer.toString(exitCode));
    };
  }

  /** The sentence for a file on which this happened; the same however often it was tried. */
  String reason(Request.Work work) {
    String who =
        switch (work) {
          case MEASURE -> "the decoder";
          case FACTS -> "the reader of shot facts";
          case DIGEST -> "the reader of its bytes";
        };
    return switch (how) {
          case CRASHED -> who + " crashed (native fault" + detail + ") on this file";
          case TIMED_OUT -> who + " took longer than " + detail + " s";
          case ENDLESS -> who + " came to no end on this file";
          case OUT_OF_MEMORY -> who + " needed more than " + detail + " MiB of memory";
          case GARBLED -> who + " gave a damaged answer on this file";
          case STOPPED_BY_SYSTEM ->
              "the system stopped " + who + " on this file, perhaps for lack of memory";
          case ENDED -> who + " ended without an answer (exit code " + detail + ")";
          case NOT_STARTED ->
              "the computer has no room for a worker with "
                  + detail
                  + " MiB for a frame this large";
        }
        + ADVICE;
  }
}
