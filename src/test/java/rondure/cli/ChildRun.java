package rondure.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/** The whole command in a process of its own. */
final class ChildRun {
  private static final int PATIENCE_SECONDS = 600;
  private static final long POLL_MILLISECONDS = 5;

  private final Path temporary;
  private final Process process;

  /** A process yet to be started. */
  static final class Builder {
    private final Path home;
    private final List<String> before = new ArrayList<>();
    private final List<String> javaOptions = new ArrayList<>();
    private final Map<String, String> environment = new TreeMap<>();

    private Builder(Path home) {
      this.home = home;
    }

    /** A command that runs the command given behind it. */
    Builder through(String... command) {
      before.addAll(List.of(command));
      return this;
    }

    Builder javaOption(String option) {
      javaOptions.add(option);
      return this;
    }

    Builder environment(String name, String value) {
      environment.put(name, value);
      return this;
    }

    /** Starts in the home folder; its temporary folder and what it says lie there too. */
    ChildRun start(Object... arguments) throws IOException {
      Path temporary = Files.createDirectories(home.resolve("tmp"));
      List<String> command = new ArrayList<>(before);
      command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
      command.addAll(List.of("-Xmx512m", "-XX:TieredStopAtLevel=1"));
      command.add("-Djava.io.tmpdir=" + temporary);
      command.addAll(javaOptions);
      command.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
      Arrays.stream(arguments).map(Object::toString).forEach(command::add);
      ProcessBuilder builder = new ProcessBuilder(command);
      builder.environment().putAll(environment);
      Process process =
          builder
              .directory(home.toFile())
              .redirectOutput(home.resolve("child-out").toFile())
              .redirectError(home.resolve("child-err").toFile())
              .start();
      return new ChildRun(temporary, process);
    }
  }

  private ChildRun(Path temporary, Process process) {
    this.temporary = temporary;
    this.process = process;
  }

  /**
   * @param home a folder for the process's temporary files and for what it says
   */
  static Builder in(Path home) {
    return new Builder(home);
  }

  /** Waits for the end, for ten minutes. */
  Run end() throws IOException, InterruptedException {
    return end(PATIENCE_SECONDS);
  }

  /** Waits for the end. */
  Run end(int patienceSeconds) throws IOException, InterruptedException {
    if (!process.waitFor(patienceSeconds, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("the command did not end");
    }
    return new Run(process.exitValue(), said("child-out"), said("child-err"));
  }

  /** Waits until something is so while the command runs. */
  void await(BooleanSupplier condition) throws IOException, InterruptedException {
    while (!condition.getAsBoolean()) {
      if (!process.isAlive()) {
        throw new AssertionError("the command ended too early: " + end());
      }
      Thread.sleep(POLL_MILLISECONDS);
    }
  }

  boolean isOver() {
    return !process.isAlive();
  }

  /** The processes that live below the command. */
  List<ProcessHandle> below() {
    return process.descendants().toList();
  }

  /** Sends a signal and answers with the processes that lived below the command. */
  List<ProcessHandle> signal(String name) throws IOException, InterruptedException {
    List<ProcessHandle> below = below();
    new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
    return below;
  }

  /** What the command has in its temporary folder. */
  List<String> temporaryFiles() throws IOException {
    try (Stream<Path> files = Files.list(temporary)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> !name.startsWith("hsperfdata"))
          .toList();
    }
  }

  private String said(String name) throws IOException {
    Path file = temporary.resolveSibling(name);
    return Files.exists(file) ? Files.readString(file, StandardCharsets.UTF_8) : "";
  }
}
