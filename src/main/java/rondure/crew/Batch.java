package rondure.crew;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Jobs 0 to size − 1 of one batch on their way: taken by any thread, delivered in order by one.
 *
 * <p>A job is handed out only when it is less than {@code window} places ahead of the next outcome
 * to be delivered, so at most {@code window} outcomes wait here, whatever the size.
 *
 * @param <T> the kind of answer
 */
final class Batch<T> {
  private final int size;
  private final int window;
  private final Map<Integer, Outcome<T>> waiting = new HashMap<>();
  private int taken;
  private int delivered;
  private boolean stopped;
  private CrewProblem problem;
  private RuntimeException fault;

  Batch(int size, int window) {
    if (size < 0 || window < 1) {
      throw new IllegalArgumentException(
          "size must be >= 0 and window >= 1, were " + size + " and " + window);
    }
    this.size = size;
    this.window = window;
  }

  /** The next job to be done, waiting for its turn; −1 when there are no more. */
  synchronized int take() throws InterruptedException {
    while (!stopped && taken < size && taken >= delivered + window) {
      wait();
    }
    return stopped || taken >= size ? -1 : taken++;
  }

  /** Hands in the outcome of a job that was taken. */
  synchronized void put(int index, Outcome<T> outcome) {
    waiting.put(index, outcome);
    notifyAll();
  }

  /** Ends the batch: the thread that delivers gets this problem. */
  synchronized void fail(CrewProblem trouble) {
    problem = problem == null ? trouble : problem;
    stop();
  }

  /** Ends the batch: the thread that delivers gets this fault of the program. */
  synchronized void fail(RuntimeException trouble) {
    fault = fault == null ? trouble : fault;
    stop();
  }

  /** No more jobs are handed out. */
  synchronized void stop() {
    stopped = true;
    notifyAll();
  }

  synchronized boolean isStopped() {
    return stopped;
  }

  /** Gives all outcomes in order to the sink, on this thread, until the last is delivered. */
  void deliver(Sink<T> sink) throws CrewProblem, InterruptedException {
    for (int i = 0; i < size; i++) {
      sink.accept(i, next(i));
    }
  }

  private synchronized Outcome<T> next(int index) throws CrewProblem, InterruptedException {
    Optional<Outcome<T>> outcome = Optional.ofNullable(waiting.remove(index));
    while (outcome.isEmpty() && !stopped) {
      wait();
      outcome = Optional.ofNullable(waiting.remove(index));
    }
    if (fault != null) {
      throw fault;
    }
    if (problem != null) {
      throw problem;
    }
    delivered = index + 1;
    notifyAll();
    return outcome.orElseThrow(() -> new CrewProblem("the crew was closed while it was working"));
  }
}
