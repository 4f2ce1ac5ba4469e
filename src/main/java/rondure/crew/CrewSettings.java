package rondure.crew;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import rondure.intake.ReadingLimits;

/**
 * Settings of the pool of worker processes.
 *
 * @param workers worker processes at one time [one per core]: decoding and measuring keep a core
 *     busy each
 * @param megapixels frame size that every worker has room for from its start [25: the usual 24 with
 *     their margins]; a larger frame restarts the one worker that takes it with a larger heap
 * @param timeoutSeconds time for one file [60], plus {@link #SECONDS_PER_MEGAPIXEL} for pixels:
 *     enough for a slow card reader; a decoder that works all the while is ended sooner, after
 *     {@link #PROCESSOR_SECONDS_BASE} and {@link #PROCESSOR_SECONDS_PER_MEGAPIXEL} of processor
 *     time
 * @param retries further tries on a fresh worker after a death or a timeout [1]: a chance fault
 *     does not lose a frame, a faulty file loses little time
 * @param tasksClass name of the {@link WorkerTasks} that a worker runs
 * @param javaExecutable the {@code java} that runs a worker [the one running this program]
 * @param limits what a single file may ask for
 */
public record CrewSettings(
    int workers,
    double megapixels,
    int timeoutSeconds,
    int retries,
    String tasksClass,
    Path javaExecutable,
    ReadingLimits limits) {

  /** Largest frame that a worker's heap and time are sized for: what the limits admit. */
  public static final double MEGAPIXELS_MAX = 250;

  /** Heap per megapixel, MiB: four planes of 32-bit samples at one time. */
  public static final double HEAP_MIB_PER_MEGAPIXEL = 16;

  /** Heap for everything but pixels, MiB. */
  public static final double HEAP_MIB_BASE = 128;

  /** Time per megapixel, s: 48 s for a frame of 24 megapixels that takes a few seconds. */
  public static final double SECONDS_PER_MEGAPIXEL = 2;

  /**
   * Processor time for one file whatever its size, s. A decoder that loops holds up the night no
   * longer; the start of a worker and its first four frames of 24 megapixels take 8.7 s together,
   * half of that the compiler's.
   */
  public static final double PROCESSOR_SECONDS_BASE = 6;

  /** Processor time per megapixel, s: four times what an uncompressed RAW takes. */
  public static final double PROCESSOR_SECONDS_PER_MEGAPIXEL = 0.16;

  private static final int WORKERS_MAX = 256;
  private static final String REAL_TASKS = "rondure.crew.RealTasks";

  public CrewSettings {
    if (workers < 1 || workers > WORKERS_MAX) {
      throw new IllegalArgumentException(
          "workers must be 1 to " + WORKERS_MAX + ", was " + workers);
    }
    if (!(megapixels >= 0 && megapixels <= MEGAPIXELS_MAX)) {
      throw new IllegalArgumentException(
          "megapixels must be 0 to " + MEGAPIXELS_MAX + ", was " + megapixels);
    }
    if (timeoutSeconds < 1) {
      throw new IllegalArgumentException("timeoutSeconds must be >= 1, was " + timeoutSeconds);
    }
    if (retries < 0 || retries > 9) {
      throw new IllegalArgumentException("retries must be 0 to 9, was " + retries);
    }
    Objects.requireNonNull(tasksClass, "tasksClass");
    Objects.requireNonNull(javaExecutable, "javaExecutable");
    Objects.requireNonNull(limits, "limits");
  }

  /** With the default limits for a single file. */
  CrewSettings(
      int workers,
      double megapixels,
      int timeoutSeconds,
      int retries,
      String tasksClass,
      Path javaExecutable) {
    this(
        workers,
        megapixels,
        timeoutSeconds,
        retries,
        tasksClass,
        javaExecutable,
        ReadingLimits.defaults());
  }

  /** One worker per core, 25 megapixels, 60 s, one retry, the real decoding and measuring. */
  public static CrewSettings defaults() {
    int cores = Math.min(WORKERS_MAX, Runtime.getRuntime().availableProcessors());
    return new CrewSettings(cores, 25, 60, 1, REAL_TASKS, runningJava());
  }

  public CrewSettings withWorkers(int count) {
    return new CrewSettings(
        count, megapixels, timeoutSeconds, retries, tasksClass, javaExecutable, limits);
  }

  /** The same with other limits for a single file. */
  public CrewSettings withLimits(ReadingLimits others) {
    return new CrewSettings(
        workers, megapixels, timeoutSeconds, retries, tasksClass, javaExecutable, others);
  }

  /**
   * Largest heap of a worker that decodes and measures frames of this size, MiB; frames beyond
   * {@link #MEGAPIXELS_MAX} get no more than that size does. 512 MiB at 24 megapixels: with the
   * native decoder's 10 bytes per pixel (230 MiB) and the virtual machine itself (about 120 MiB) a
   * worker stays below 1 GB resident.
   */
  public static int heapMiBFor(double megapixels) {
    double bounded = Math.max(0, Math.min(MEGAPIXELS_MAX, megapixels));
    return (int) Math.ceil(HEAP_MIB_BASE + HEAP_MIB_PER_MEGAPIXEL * bounded);
  }

  /** Time for one frame of this size. */
  TimeLimit limitFor(double frameMegapixels) {
    double bounded = Math.max(0, Math.min(MEGAPIXELS_MAX, frameMegapixels));
    return new TimeLimit(
        timeoutSeconds + (int) Math.ceil(SECONDS_PER_MEGAPIXEL * bounded),
        PROCESSOR_SECONDS_BASE + PROCESSOR_SECONDS_PER_MEGAPIXEL * bounded);
  }

  private static Path runningJava() {
    boolean windows =
        System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("windows");
    return Path.of(System.getProperty("java.home"), "bin", windows ? "java.exe" : "java");
  }
}
