package rondure.crew;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One worker process as the crew sees it. Used by one thread at a time; anyone may kill it. */
final class Worker {
  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
  private static final int EXIT_WAIT_SECONDS = 5;

  /** Processor time of a worker's start where the limits of processor time were set, s. */
  private static final double START_SECONDS = 0.6;

  private final Process process;
  private final int heapMiB;
  private final Path crashLog;
  private final ScheduledExecutorService timer;
  private final OutputStream requests;
  private final InputStream answers;
  private final LastWords lastWords;
  private double slowness = 1;
  private volatile boolean overdue;

  /**
   * @param process the running worker
   * @param heapMiB its heap limit
   * @param crashLog where it writes the log of a crash
   * @param timer ends it when an answer takes too long
   */
  Worker(Process process, int heapMiB, Path crashLog, ScheduledExecutorService timer) {
    this.process = process;
    this.heapMiB = heapMiB;
    this.crashLog = crashLog;
    this.timer = timer;
    this.requests = new BufferedOutputStream(process.getOutputStream());
    this.answers = new BufferedInputStream(process.getInputStream());
    this.lastWords = new LastWords(process.getErrorStream());
  }

  int heapMiB() {
    return heapMiB;
  }

  boolean isAlive() {
    return process.isAlive() && !overdue;
  }

  /** True when the process has ended. */
  boolean isGone() {
    return !process.isAlive();
  }

  /** What it last wrote to standard error. */
  String lastWords() {
    return lastWords.text();
  }

  /** Ends the process without waiting for it. */
  void kill() {
    process.destroyForcibly();
  }

  /** Waits for a killed process to be gone. */
  boolean awaitExit(long milliseconds) throws InterruptedException {
    return process.waitFor(milliseconds, TimeUnit.MILLISECONDS);
  }

  /** Waits until the worker has started, which tells how slow this computer is. */
  void awaitReady(int timeoutSeconds) throws WorkerLost {
    exchange(() -> {}, 0, new TimeLimit(timeoutSeconds, timeoutSeconds));
    slowness = Math.max(1, Watch.processorSeconds(process.toHandle()) / START_SECONDS);
  }

  /**
   * Sends a request and waits for its answer.
   *
   * @throws WorkerLost when there is no answer in time; the process has ended then
   */
  Answer ask(Request request, TimeLimit limit) throws WorkerLost {
    byte[] json = encode(request);
    Answer answer = exchange(() -> Wire.write(requests, json), request.id(), limit.times(slowness));
    if (answer.kind() == Answer.Kind.NEEDS_MEMORY) {
      kill();
      throw new WorkerLost(WorkerLost.How.OUT_OF_MEMORY, Integer.toString(heapMiB));
    }
    return answer;
  }

  private static byte[] encode(Request request) {
    try {
      return RecordJson.write(request);
    } catch (IOException e) {
      throw new IllegalArgumentException("request cannot be written: " + e.getMessage(), e);
    }
  }

  private interface Sending {
    void send() throws IOException;
  }

  private Answer exchange(Sending sending, long id, TimeLimit limit) throws WorkerLost {
    Watch watch = new Watch(process.toHandle(), limit);
    Future<?> looks =
        timer.scheduleWithFixedDelay(
            watch, Watch.EVERY_MILLISECONDS, Watch.EVERY_MILLISECONDS, TimeUnit.MILLISECONDS);
    try {
      sending.send();
      Answer answer = RecordJson.read(Wire.read(answers), Answer.class);
      if (answer.id() != id) {
        throw new Wire.Garbled("answer to " + answer.id() + " instead of " + id);
      }
      return answer;
    } catch (IOException e) {
      WorkerLost lost = lost(e, watch);
      LOG.debug("worker {} lost: {}; it said: {}", process.pid(), lost.getMessage(), lastWords());
      throw lost;
    } finally {
      looks.cancel(false);
      overdue = watch.overdue().isPresent();
    }
  }

  private WorkerLost lost(IOException trouble, Watch watch) {
    boolean endedItself = mayBeEnding(trouble) && awaitOwnExit();
    kill();
    if (watch.overdue().isPresent()) {
      return watch.overdue().get();
    }
    return endedItself
        ? WorkerLost.byExit(process.exitValue(), CrashLog.read(crashLog), heapMiB)
        : new WorkerLost(WorkerLost.How.GARBLED, trouble.getMessage());
  }

  private static boolean mayBeEnding(IOException trouble) {
    return trouble instanceof Wire.Garbled garbled
        ? garbled.isCrashReport()
        : !(trouble instanceof JsonProcessingException);
  }

  private boolean awaitOwnExit() {
    try {
      return process.waitFor(EXIT_WAIT_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
