package rondure.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.IntSupplier;
import rondure.base.EndHook;

/**
 * Turns Ctrl-C, and any other polite request to end, into an orderly end with its own exit code:
 * the command is interrupted and gets some time to clean up.
 */
final class Stopping {
  /** Longer than the crew takes to end its workers, shorter than anyone's patience. */
  private static final int PATIENCE_SECONDS = 5;

  private final CountDownLatch ended = new CountDownLatch(1);
  private volatile boolean begun;
  private volatile int code = ExitCode.STOPPED;

  /** True as soon as somebody asked for the end. */
  boolean begun() {
    return begun;
  }

  /** Runs a command on this thread; ends the program at once when it is asked to. */
  int guard(IntSupplier command) {
    Thread runner = Thread.currentThread();
    EndHook hook = new EndHook(() -> stop(runner), "stopping");
    hook.add();
    code = command.getAsInt();
    ended.countDown();
    hook.remove();
    return code;
  }

  private void stop(Thread runner) {
    begun = true;
    runner.interrupt();
    long deadlineNanos = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    try {
      if (!ended.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        System.err.println(Troubles.STOPPED);
      }
      awaitOtherHooks(runner, deadlineNanos);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Runtime.getRuntime().halt(code);
  }

  /** Others clean up too, each in a hook of its own: the crew, the output, the Java library. */
  private static void awaitOtherHooks(Thread runner, long deadlineNanos)
      throws InterruptedException {
    for (Thread thread : Thread.getAllStackTraces().keySet()) {
      boolean mayBeHook = !thread.isDaemon() && thread != runner;
      if (mayBeHook && thread != Thread.currentThread()) {
        long left = TimeUnit.NANOSECONDS.toMillis(deadlineNanos - System.nanoTime());
        thread.join(Math.max(1, left));
      }
    }
  }
}
