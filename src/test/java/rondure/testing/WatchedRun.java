package rondure.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import rondure.cli.Main;

/**
 * The real command in a process of its own, and what it took: time, processor time, and the largest
 * resident memory of parent and workers as Linux counts it (VmHWM of proc(5), read while it runs).
 *
 * @param exitCode of the command
 * @param seconds from start to end
 * @param processorSeconds of the command and its workers, user and system (cutime and cstime of
 *     proc(5), in clock ticks of 10 ms)
 * @param parentKb largest resident memory, kB
 * @param workerKb of the largest worker, kB
 */
public record WatchedRun(
    int exitCode, double seconds, double processorSeconds, long parentKb, long workerKb) {
  private static final long LOOK_MILLIS = 100;
  private static final double TICKS_PER_SECOND = 100;

  /** Places of cutime and cstime behind the process' name, which may hold spaces. */
  private static final int CHILDREN_USER = 13;

  private static final int CHILDREN_SYSTEM = 14;

  /** Whether the system tells what this needs. */
  public static boolean isPossible() {
    return Files.exists(Path.of("/proc/self/status"));
  }

  /**
   * Runs the command to its end.
   *
   * @param javaOptions of the parent, such as -Xmx600m
   * @param log takes what it says
   */
  public static WatchedRun of(List<String> javaOptions, Path log, Object... arguments)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(javaOptions);
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
    Arrays.stream(arguments).map(Object::toString).forEach(command::add);
    double before = ofChildren();
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    long[] kb = watched(process);
    double seconds = (System.nanoTime() - start) / 1e9;
    return new WatchedRun(process.exitValue(), seconds, ofChildren() - before, kb[0], kb[1]);
  }

  private static long[] watched(Process process) throws InterruptedException {
    long[] kb = new long[2];
    while (!process.waitFor(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
      kb[0] = Math.max(kb[0], residentKb(process.toHandle()));
      process.descendants().forEach(one -> kb[1] = Math.max(kb[1], residentKb(one)));
    }
    return kb;
  }

  private static long residentKb(ProcessHandle process) {
    try (Stream<String> lines = Files.lines(Path.of("/proc/" + process.pid() + "/status"))) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException | UncheckedIOException over) {
      return 0;
    }
  }

  /** Of all processes that this one and its ended children waited for. */
  private static double ofChildren() throws IOException {
    String stat = Files.readString(Path.of("/proc/self/stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return (Long.parseLong(fields[CHILDREN_USER]) + Long.parseLong(fields[CHILDREN_SYSTEM]))
        / TICKS_PER_SECOND;
  }
}
