package rondure.crew;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import rondure.base.EndHook;
import rondure.base.WorkFolder;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

/**
 * A pool of worker processes that read facts and measure frames, so that no file can harm this
 * process. Outcomes do not depend on the number of workers. For one thread at a time.
 *
 * <p>Workers start when there is work and live until {@link #close()}. They end with this process
 * however it ends. What they need on disk is in one private temporary folder, removed on closing.
 */
public final class Crew implements AutoCloseable {
  /** Outcomes that may wait for an earlier one, per worker: evens out frames of unequal length. */
  private static final int WINDOW_PER_WORKER = 8;

  private static final double PIXELS_PER_MEGAPIXEL = 1e6;
  private static final long JOIN_MILLISECONDS = 10_000;

  private final CrewSettings settings;
  private final WorkFolder folder;
  private final Roster roster;
  private final List<Member> members;
  private final EndHook endHook;
  private long nextId = 1;

  private Crew(CrewSettings settings, WorkFolder folder) {
    this.settings = settings;
    this.folder = folder;
    this.roster = new Roster(settings, folder);
    this.members =
        IntStream.range(0, settings.workers())
            .mapToObj(i -> new Member(roster, 1 + settings.retries()))
            .toList();
    this.endHook = new EndHook(this::end, "crew-shutdown");
  }

  /**
   * A crew ready for work. Removes what killed runs left in the temporary folder.
   *
   * @throws CrewProblem when there is no such java, or no private folder can be made
   */
  public static Crew start(CrewSettings settings) throws CrewProblem {
    return start(settings, Path.of(System.getProperty("java.io.tmpdir")));
  }

  /** As {@link #start(CrewSettings)}, with the private folder under {@code root}. */
  static Crew start(CrewSettings settings, Path root) throws CrewProblem {
    if (!Files.isExecutable(settings.javaExecutable())) {
      throw new CrewProblem(
          "there is no java to run the worker processes at "
              + settings.javaExecutable()
              + "; check the Java installation");
    }
    WorkFolder.removeStale(root);
    try {
      Crew crew = new Crew(settings, WorkFolder.create(root));
      crew.endWithTheProgram();
      return crew;
    } catch (IOException e) {
      throw new CrewProblem(
          "no temporary folder can be made in " + root + "; check its free space and rights", e);
    }
  }

  private void endWithTheProgram() {
    try {
      endHook.add();
    } catch (IllegalStateException e) {
      end();
    }
  }

  /**
   * Reads the facts of the files.
   *
   * @param sink gets one outcome per file, in order, on this thread
   * @throws CrewProblem when the crew as a whole cannot work
   * @throws InterruptedException when this thread is interrupted or the program ends; work in
   *     progress is given up
   */
  public void facts(List<Path> files, Sink<ShotFacts> sink)
      throws CrewProblem, InterruptedException {
    long firstId = reserveIds(files.size());
    int heapMiB = CrewSettings.heapMiBFor(settings.megapixels());
    run(
        files.size(),
        i ->
            new Member.Job<>(
                Request.facts(firstId + i, files.get(i)),
                heapMiB,
                settings.limitFor(0),
                Answer::facts),
        sink);
  }

  /**
   * Digests all bytes of the files: SHA-256, hexadecimal.
   *
   * @param jobs the files with their facts, by whose size they get their time
   * @param sink gets one outcome per job, in order, on this thread
   * @throws CrewProblem when the crew as a whole cannot work
   * @throws InterruptedException when this thread is interrupted or the program ends
   */
  public void digests(List<MeasureJob> jobs, Sink<String> sink)
      throws CrewProblem, InterruptedException {
    long firstId = reserveIds(jobs.size());
    int heapMiB = CrewSettings.heapMiBFor(settings.megapixels());
    run(
        jobs.size(),
        i ->
            new Member.Job<>(
                Request.digest(firstId + i, jobs.get(i).path()),
                heapMiB,
                settings.limitFor(megapixels(jobs.get(i))),
                Answer::contentDigest),
        sink);
  }

  /**
   * Decodes and measures the files.
   *
   * @param keeper hears of every measurement as soon as it is there
   * @param sink gets one outcome per job, in order, on this thread
   * @throws CrewProblem when the crew as a whole cannot work
   * @throws InterruptedException when this thread is interrupted or the program ends; work in
   *     progress is given up
   */
  public void measure(
      List<MeasureJob> jobs, StarSettings starSettings, Keeper keeper, Sink<FrameMeasurement> sink)
      throws CrewProblem, InterruptedException {
    long firstId = reserveIds(jobs.size());
    run(
        jobs.size(),
        i ->
            measureJob(
                Request.measure(firstId + i, jobs.get(i), starSettings), jobs.get(i), keeper),
        sink);
  }

  /** Ends all workers and removes the private folder; takes a few seconds at most. */
  @Override
  public void close() {
    endHook.remove();
    end();
  }

  private synchronized void end() {
    roster.close();
    folder.close();
  }

  private long reserveIds(int count) {
    long first = nextId;
    nextId += count;
    return first;
  }

  private Member.Job<FrameMeasurement> measureJob(Request request, MeasureJob job, Keeper keeper) {
    double megapixels = megapixels(job);
    int heapMiB = CrewSettings.heapMiBFor(Math.max(megapixels, settings.megapixels()));
    return new Member.Job<>(
        request,
        heapMiB,
        settings.limitFor(megapixels),
        answer -> {
          answer
              .contentDigest()
              .ifPresent(digest -> keeper.keep(job, digest, answer.measurement().orElseThrow()));
          return answer.measurement();
        });
  }

  private double megapixels(MeasureJob job) {
    double pixels = (double) job.facts().widthPx() * job.facts().heightPx();
    return pixels > 0 ? pixels / PIXELS_PER_MEGAPIXEL : settings.megapixels();
  }

  private <T> void run(int size, IntFunction<Member.Job<T>> jobs, Sink<T> sink)
      throws CrewProblem, InterruptedException {
    Batch<T> batch = new Batch<>(size, WINDOW_PER_WORKER * settings.workers());
    List<Thread> threads = new ArrayList<>();
    for (Member member : members) {
      threads.add(Roster.daemon(() -> member.work(batch, jobs), "crew-member"));
    }
    threads.forEach(Thread::start);
    boolean delivered = false;
    try {
      batch.deliver(sink);
      delivered = true;
    } catch (CrewProblem | RuntimeException problem) {
      refuseWhenClosed();
      throw problem;
    } finally {
      batch.stop();
      if (!delivered) {
        roster.endAll();
      }
      join(threads);
    }
    refuseWhenClosed();
  }

  /** Outcomes of a crew that was closed at its work, as the program ended, are no answers. */
  private void refuseWhenClosed() throws InterruptedException {
    if (roster.isClosed()) {
      throw new InterruptedException("the crew was closed while it was working");
    }
  }

  private static void join(List<Thread> threads) throws InterruptedException {
    for (Thread thread : threads) {
      thread.join(JOIN_MILLISECONDS);
    }
  }
}
