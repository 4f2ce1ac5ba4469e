package rondure.crew;

import java.time.Duration;
import java.util.Optional;

/** Ends a worker that takes longer over a file than it may. */
final class Watch implements Runnable {
  /** Between two looks at the worker, ms. */
  static final long EVERY_MILLISECONDS = 200;

  private final ProcessHandle worker;
  private final TimeLimit limit;
  private final long begunNanos = System.nanoTime();
  private Optional<Duration> usedBefore = Optional.empty();
  private volatile Optional<WorkerLost> overdue = Optional.empty();

  Watch(ProcessHandle worker, TimeLimit limit) {
    this.worker = worker;
    this.limit = limit;
  }

  /** Why the worker was ended; empty when it was not. */
  Optional<WorkerLost> overdue() {
    return overdue;
  }

  /** Looks once. A short job is over before the first look and costs nothing. */
  @Override
  public void run() {
    if (System.nanoTime() - begunNanos > limit.seconds() * 1e9) {
      end(new WorkerLost(WorkerLost.How.TIMED_OUT, Integer.toString(limit.seconds())));
      return;
    }
    Optional<Duration> used = worker.info().totalCpuDuration();
    if (usedBefore.isEmpty()) {
      usedBefore = used;
    } else if (used.isPresent()
        && seconds(used.get().minus(usedBefore.get())) > limit.processorSeconds()) {
      end(new WorkerLost(WorkerLost.How.ENDLESS, ""));
    }
  }

  private void end(WorkerLost reason) {
    overdue = overdue.isPresent() ? overdue : Optional.of(reason);
    worker.destroyForcibly();
  }

  /** Processor time that a process used so far, s; 0 where the system does not tell. */
  static double processorSeconds(ProcessHandle process) {
    return process.info().totalCpuDuration().map(Watch::seconds).orElse(0.0);
  }

  private static double seconds(Duration duration) {
    return duration.toNanos() / 1e9;
  }
}
