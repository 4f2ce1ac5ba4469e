package rondure.crew;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleSupplier;
import rondure.base.FrameProblem;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

/**
 * What it costs to measure in a worker process: the same frames in this process and through a crew
 * of one worker, with all that a worker does (digests before and after, facts read beforehand).
 * {@code src/test/bench/isolation.sh} runs it.
 */
public final class IsolationBenchmark {
  private static final int WARM_UP = 4;

  private final List<MeasureJob> jobs;

  private IsolationBenchmark(List<MeasureJob> jobs) {
    this.jobs = jobs;
  }

  /**
   * @param arguments "here" or "crew", the number of frames, and the files to be taken in turns
   */
  public static void main(String[] arguments) throws Exception {
    int frames = Integer.parseInt(arguments[1]);
    List<MeasureJob> jobs = new ArrayList<>();
    for (int i = 0; i < WARM_UP + frames; i++) {
      Path file = Path.of(arguments[2 + i % (arguments.length - 2)]).toAbsolutePath();
      jobs.add(new MeasureJob(file, new RealTasks().facts(file)));
    }
    IsolationBenchmark benchmark = new IsolationBenchmark(jobs);
    if (arguments[0].equals("here")) {
      benchmark.here();
    } else {
      benchmark.crew();
    }
  }

  private void here() throws FrameProblem {
    RealTasks tasks = new RealTasks();
    Timer timer = new Timer("here", () -> own());
    for (int i = 0; i < jobs.size(); i++) {
      if (i == WARM_UP) {
        timer.begin();
      }
      Path file = jobs.get(i).path();
      ShotFacts facts = jobs.get(i).facts();
      String before = ContentDigest.required(file);
      tasks.measure(file, facts, StarSettings.defaults());
      if (!before.equals(ContentDigest.required(file))) {
        throw new IllegalStateException(file + " changed");
      }
    }
    timer.end(jobs.size() - WARM_UP);
  }

  private void crew() throws Exception {
    try (Crew crew = Crew.start(CrewSettings.defaults().withWorkers(1))) {
      Timer timer = new Timer("crew", () -> own() + below());
      measure(crew, jobs.subList(0, WARM_UP));
      System.out.printf(
          Locale.ROOT, "worker's start and %d frames: %.2f s of processor%n", WARM_UP, below());
      timer.begin();
      measure(crew, jobs.subList(WARM_UP, jobs.size()));
      timer.end(jobs.size() - WARM_UP);
    }
  }

  private static void measure(Crew crew, List<MeasureJob> some) throws Exception {
    boolean[] done = new boolean[some.size()];
    crew.measure(
        some,
        StarSettings.defaults(),
        (job, digest, measurement) -> {},
        (index, outcome) -> done[index] = outcome instanceof Outcome.Done);
    for (boolean one : done) {
      if (!one) {
        throw new IllegalStateException("a frame was not measured: " + Arrays.toString(done));
      }
    }
  }

  private static double own() {
    return Watch.processorSeconds(ProcessHandle.current());
  }

  private static double below() {
    return ProcessHandle.current().descendants().mapToDouble(Watch::processorSeconds).sum();
  }

  /** Clock and processor time of some frames. */
  private static final class Timer {
    private final String name;
    private final DoubleSupplier processor;
    private long begunNanos;
    private double usedBefore;

    Timer(String name, DoubleSupplier processor) {
      this.name = name;
      this.processor = processor;
    }

    void begin() {
      begunNanos = System.nanoTime();
      usedBefore = processor.getAsDouble();
    }

    void end(int frames) {
      double seconds = (System.nanoTime() - begunNanos) / 1e9;
      double used = processor.getAsDouble() - usedBefore;
      System.out.printf(
          Locale.ROOT,
          "%s: %d frames, %.2f s, %.3f frames a second, %.3f s of processor a frame%n",
          name,
          frames,
          seconds,
          frames / seconds,
          used / frames);
    }
  }
}
