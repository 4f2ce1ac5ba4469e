package rondure.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import rondure.testing.WatchedRun;

/**
 * Whole runs of the command on the first frames of a night: the first run, which measures, and a
 * second, which finds everything measured; their difference is the time of measuring.
 */
public final class NightTimes {
  private static final String COLUMNS =
      "| frames | workers | whole run, s | … of that, judging and report, s | processor time, s |"
          + " parent, MB | largest worker, MB |";

  private NightTimes() {}

  /**
   * Prints a table.
   *
   * @param arguments the night's folder, one for the runs, numbers of workers joined by commas, and
   *     numbers of frames
   */
  public static void main(String[] arguments) throws Exception {
    Path work = Files.createDirectories(Path.of(arguments[1]));
    List<Path> frames;
    try (Stream<Path> files = Files.list(Path.of(arguments[0]))) {
      frames = files.filter(NightTimes::isFrame).sorted().toList();
    }
    System.out.println(COLUMNS);
    System.out.println(COLUMNS.replaceAll("[^|]+", "---"));
    for (String count : Arrays.copyOfRange(arguments, 3, arguments.length)) {
      Path night = linked(frames.subList(0, Integer.parseInt(count)), work.resolve("night"));
      for (String workers : arguments[2].split(",")) {
        System.out.println(row(night, work, count, workers));
      }
    }
  }

  private static boolean isFrame(Path file) {
    return Stream.of(".tif", ".dng").anyMatch(file.toString()::endsWith);
  }

  private static String row(Path night, Path work, String count, String workers) throws Exception {
    Path out = work.resolve("out");
    remove(out);
    WatchedRun first = run(night, out, workers);
    WatchedRun second = run(night, out, workers);
    return String.format(
        Locale.ROOT,
        "| %s | %s | %.1f | %.1f | %.1f | %d | %d |",
        count,
        workers,
        first.seconds(),
        second.seconds(),
        first.processorSeconds(),
        first.parentKb() / 1000,
        first.workerKb() / 1000);
  }

  private static WatchedRun run(Path night, Path out, String workers) throws Exception {
    Path log = out.resolveSibling("log");
    WatchedRun run =
        WatchedRun.of(List.of("-Xmx1g"), log, "report", night, "--out", out, "--workers", workers);
    if (run.exitCode() != 0) {
      throw new IOException("exit code " + run.exitCode() + ": " + Files.readString(log));
    }
    return run;
  }

  private static Path linked(List<Path> frames, Path night) throws IOException {
    remove(night);
    Files.createDirectory(night);
    for (Path frame : frames) {
      Files.createLink(night.resolve(frame.getFileName()), frame);
    }
    return night;
  }

  private static void remove(Path folder) throws IOException {
    List<Path> all = new ArrayList<>();
    if (Files.exists(folder)) {
      try (Stream<Path> walk = Files.walk(folder)) {
        walk.sorted(Comparator.reverseOrder()).forEach(all::add);
      }
    }
    for (Path one : all) {
      Files.delete(one);
    }
  }
}
