package rondure.crew;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.reflect.Constructor;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import rondure.base.FrameProblem;
import rondure.intake.ReadingLimits;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

/**
 * Main class of a worker process: requests on standard input, answers on standard output, until
 * standard input ends. It ends then even while busy, so that no worker outlives its crew.
 */
public final class WorkerMain {
  private static final int LOST_CREW = 0;
  private static final int CANNOT_WORK = 2;

  private final WorkerTasks tasks;
  private final OutputStream out;

  private WorkerMain(WorkerTasks tasks, OutputStream out) {
    this.tasks = tasks;
    this.out = out;
  }

  /**
   * @param args name of the {@link WorkerTasks} to run, and the {@link ReadingLimits} as JSON
   */
  public static void main(String[] args) {
    try {
      OutputStream out = new BufferedOutputStream(new FileOutputStream(FileDescriptor.out));
      System.setOut(System.err);
      System.setIn(InputStream.nullInputStream());
      BlockingQueue<Request> requests = listen(new FileInputStream(FileDescriptor.in));
      endWithParent();
      new WorkerMain(load(args[0]).within(limits(args[1])), out).work(requests);
    } catch (Throwable e) {
      System.err.println("worker cannot work: " + e);
    } finally {
      Runtime.getRuntime().halt(CANNOT_WORK);
    }
  }

  private static WorkerTasks load(String className) throws ReflectiveOperationException {
    Constructor<?> constructor = Class.forName(className).getDeclaredConstructor();
    constructor.setAccessible(true);
    return (WorkerTasks) constructor.newInstance();
  }

  private static ReadingLimits limits(String json) throws IOException {
    return RecordJson.read(json.getBytes(StandardCharsets.UTF_8), ReadingLimits.class);
  }

  /** Reads requests on a thread of its own, which ends the process when there can be no more. */
  private static BlockingQueue<Request> listen(InputStream pipe) {
    BlockingQueue<Request> requests = new LinkedBlockingQueue<>();
    InputStream in = new BufferedInputStream(pipe);
    Thread listener =
        new Thread(
            () -> {
              try {
                while (true) {
                  requests.add(RecordJson.read(Wire.read(in), Request.class));
                }
              } catch (IOException e) {
                Runtime.getRuntime().halt(LOST_CREW);
              }
            },
            "requests");
    listener.setDaemon(true);
    listener.start();
    return requests;
  }

  /** A second guard, should another process hold the other end of the pipe open. */
  private static void endWithParent() {
    ProcessHandle.current()
        .parent()
        .ifPresent(p -> p.onExit().thenRun(() -> Runtime.getRuntime().halt(LOST_CREW)));
  }

  /** Answers request after request; the listener ends the process. */
  private void work(BlockingQueue<Request> requests) throws IOException, InterruptedException {
    say(Answer.of(0, Answer.Kind.READY, ""));
    while (true) {
      Request request = requests.take();
      say(answer(request));
    }
  }

  private void say(Answer answer) throws IOException {
    byte[] json;
    try {
      json = RecordJson.write(answer);
    } catch (IOException e) {
      json = RecordJson.write(Answer.of(answer.id(), Answer.Kind.FAULT, e.getMessage()));
    }
    Wire.write(out, json);
  }

  /** The digest is told only when the file held the same bytes before and after. */
  private Answer measured(Request request, Path file) throws FrameProblem {
    ShotFacts facts = request.facts().orElseThrow();
    StarSettings settings = request.settings().orElseThrow();
    Optional<String> before = ContentDigest.of(file);
    FrameMeasurement measurement = tasks.measure(file, facts, settings);
    boolean same = before.isPresent() && before.equals(ContentDigest.of(file));
    return Answer.done(request.id(), measurement, same ? before : Optional.empty());
  }

  private Answer answer(Request request) {
    try {
      Path file = Path.of(URI.create(request.file()));
      return switch (request.work()) {
        case FACTS -> Answer.done(request.id(), tasks.facts(file));
        case DIGEST -> Answer.done(request.id(), ContentDigest.required(file));
        case MEASURE -> measured(request, file);
      };
    } catch (FrameProblem e) {
      return Answer.of(request.id(), Answer.Kind.PROBLEM, String.valueOf(e.getMessage()));
    } catch (OutOfMemoryError e) {
      return Answer.of(request.id(), Answer.Kind.NEEDS_MEMORY, "");
    } catch (RuntimeException | StackOverflowError | LinkageError | AssertionError e) {
      e.printStackTrace();
      return Answer.of(request.id(), Answer.Kind.FAULT, e.toString());
    }
  }
}
