package rondure.crew;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rondure.base.WorkFolder;

/** Starts the worker processes of a crew and knows those that live. Safe for many threads. */
final class Roster implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Roster.class);
  private static final int START_SECONDS = 60;
  private static final int FAILED_STARTS_MAX = 3;
  private static final long PAUSE_MILLISECONDS = 200;
  private static final long EXIT_WAIT_MILLISECONDS = 3000;

  private final CrewSettings settings;
  private final int baseHeapMiB;
  private final WorkFolder folder;
  private final ScheduledExecutorService timer =
      Executors.newSingleThreadScheduledExecutor(work -> daemon(work, "crew-timer"));
  private final Set<Worker> living = new HashSet<>();
  private int started;
  private int failedStarts;
  private boolean everStarted;
  private boolean closed;

  Roster(CrewSettings settings, WorkFolder folder) {
    this.settings = settings;
    this.baseHeapMiB = CrewSettings.heapMiBFor(settings.megapixels());
    this.folder = folder;
  }

  /**
   * A new worker, ready for requests.
   *
   * @param heapMiB its heap limit, raised to the crew's own when lower
   * @throws WorkerLost when a worker with more heap than the crew's own does not start
   * @throws CrewProblem when workers do not start time after time, or the crew is closed
   */
  Worker start(int heapMiB) throws WorkerLost, CrewProblem, InterruptedException {
    int granted = Math.max(heapMiB, baseHeapMiB);
    for (int i = 0; i < FAILED_STARTS_MAX; i++) {
      Worker worker = launch(granted);
      try {
        worker.awaitReady(START_SECONDS);
        noteStart();
        return worker;
      } catch (WorkerLost e) {
        retire(worker);
        if (granted > baseHeapMiB) {
          LOG.debug("no worker with {} MiB", granted, e);
          proveThatWorkersStart();
          throw new WorkerLost(WorkerLost.How.NOT_STARTED, Integer.toString(granted));
        }
        noteFailure(worker, e);
      }
      Thread.sleep(PAUSE_MILLISECONDS);
    }
    throw cannotStart("");
  }

  /** Tells a frame too large for this computer from a computer where no worker starts. */
  private void proveThatWorkersStart() throws WorkerLost, CrewProblem, InterruptedException {
    if (!hasStarted()) {
      retire(start(baseHeapMiB));
    }
  }

  /** Ends a worker, without waiting for it to be gone. */
  void retire(Worker worker) {
    worker.kill();
  }

  /** Ends all workers; those who use them find them lost. */
  void endAll() {
    copyOfLiving().forEach(Worker::kill);
  }

  /** Ends all workers, starts no more, and waits a bounded time for them to be gone. */
  @Override
  public void close() {
    synchronized (this) {
      closed = true;
    }
    endAll();
    timer.shutdownNow();
    long deadline = System.nanoTime() + EXIT_WAIT_MILLISECONDS * 1_000_000;
    for (Worker worker : copyOfLiving()) {
      try {
        worker.awaitExit(Math.max(1, (deadline - System.nanoTime()) / 1_000_000));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  synchronized boolean isClosed() {
    return closed;
  }

  static Thread daemon(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    return thread;
  }

  private synchronized List<Worker> copyOfLiving() {
    return new ArrayList<>(living);
  }

  private synchronized Worker launch(int heapMiB) throws CrewProblem {
    if (closed) {
      throw new CrewProblem("the crew was closed while it was working");
    }
    Path crashLog = folder.path().resolve("crash-" + ++started + ".log");
    try {
      Process process = WorkerCommand.build(settings, heapMiB, folder.path(), crashLog).start();
      Worker worker = new Worker(process, heapMiB, crashLog, timer);
      living.removeIf(Worker::isGone);
      living.add(worker);
      return worker;
    } catch (IOException e) {
      throw cannotStart(e.getMessage());
    }
  }

  private synchronized void noteStart() {
    failedStarts = 0;
    everStarted = true;
  }

  private synchronized boolean hasStarted() {
    return everStarted;
  }

  private synchronized void noteFailure(Worker worker, WorkerLost lost) throws CrewProblem {
    failedStarts++;
    if (closed) {
      throw new CrewProblem("the crew was closed while it was working");
    }
    if (failedStarts >= FAILED_STARTS_MAX) {
      String words = worker.lastWords();
      throw cannotStart(words.isEmpty() ? lost.getMessage() : words);
    }
  }

  private CrewProblem cannotStart(String why) {
    return new CrewProblem(
        "the worker processes that read the frames cannot be started with "
            + settings.javaExecutable()
            + (why.isEmpty() ? "" : " (" + lastLine(why) + ")")
            + "; check the Java installation and that "
            + baseHeapMiB
            + " MiB of memory are free for each of "
            + settings.workers()
            + " workers");
  }

  private static String lastLine(String text) {
    return text.substring(text.lastIndexOf('\n') + 1);
  }
}
