package rondure.crew;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import rondure.intake.ReadingLimits;

/** How a worker process is started. Pure: it starts nothing. */
final class WorkerCommand {
  private static final Path SHELL = Path.of("/bin/sh");

  /** No core dumps; the terminal's Ctrl-C is for the crew, which ends its workers itself. */
  private static final String SHELL_SCRIPT = "ulimit -c 0; trap '' INT; exec \"$0\" \"$@\"";

  /**
   * Young generation, MiB: small and fixed, so that nearly all of the heap can hold the large
   * arrays of pixels, which live in the old generation.
   */
  private static final int YOUNG_MIB = 32;

  /** System properties of this process that a worker needs as well. */
  private static final List<String> HANDED_DOWN =
      List.of("rondure.libraw", "jna.library.path", "jna.boot.library.path", "java.library.path");

  private WorkerCommand() {}

  /**
   * @param settings which java, which tasks
   * @param heapMiB heap limit
   * @param folder private folder: working directory and temporary files
   * @param crashLog where the virtual machine writes the log of a crash
   */
  static ProcessBuilder build(CrewSettings settings, int heapMiB, Path folder, Path crashLog) {
    List<String> command = new ArrayList<>();
    if (Files.isExecutable(SHELL)) {
      command.addAll(List.of(SHELL.toString(), "-c", SHELL_SCRIPT));
    }
    command.add(settings.javaExecutable().toString());
    command.addAll(options(heapMiB, folder, crashLog));
    command.addAll(List.of("-cp", absolute(System.getProperty("java.class.path"))));
    command.addAll(List.of(WorkerMain.class.getName(), settings.tasksClass()));
    command.add(limits(settings.limits()));
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    adapt(builder.environment());
    return builder;
  }

  private static String limits(ReadingLimits limits) {
    try {
      return new String(RecordJson.write(limits), StandardCharsets.UTF_8);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private static List<String> options(int heapMiB, Path folder, Path crashLog) {
    List<String> options = new ArrayList<>();
    options.add("-Xmx" + heapMiB + "m");
    options.add("-Xmn" + YOUNG_MIB + "m");
    options.add("-XX:+UseSerialGC");
    options.add("-XX:-UsePerfData");
    options.add("-XX:+ExitOnOutOfMemoryError");
    options.add("-XX:+DisplayVMOutputToStderr");
    options.add("-XX:-CreateCoredumpOnCrash");
    options.add("-XX:ErrorFile=" + crashLog);
    options.add("-Djava.io.tmpdir=" + folder);
    options.add("-Djna.tmpdir=" + folder);
    options.add("-Djava.awt.headless=true");
    for (String name : HANDED_DOWN) {
      String value = System.getProperty(name);
      if (value != null) {
        options.add("-D" + name + "=" + value);
      }
    }
    return options;
  }

  /** Class path entries as absolute paths: a worker has a working directory of its own. */
  private static String absolute(String classPath) {
    return Arrays.stream(classPath.split(File.pathSeparator))
        .filter(entry -> !entry.isEmpty())
        .map(entry -> Path.of(entry).toAbsolutePath().toString())
        .collect(Collectors.joining(File.pathSeparator));
  }

  /**
   * Nothing may lift the heap limit; native code keeps to one core and few memory arenas, and takes
   * large pages for the hundreds of megabytes that a RAW needs (glibc tunables(7)), which saves a
   * twentieth of the processor's time.
   */
  private static void adapt(Map<String, String> environment) {
    environment.remove("_JAVA_OPTIONS");
    environment.remove("JDK_JAVA_OPTIONS");
    environment.putIfAbsent("MALLOC_ARENA_MAX", "2");
    environment.putIfAbsent("OMP_NUM_THREADS", "1");
    environment.putIfAbsent("GLIBC_TUNABLES", "glibc.malloc.hugetlb=1");
  }
}
