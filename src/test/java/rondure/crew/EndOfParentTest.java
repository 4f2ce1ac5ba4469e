package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EndOfParentTest {
  private static final int WAITS_MAX = 600;
  private static final long WAIT_MILLISECONDS = 50;

  @TempDir Path temp;

  @Test
  void busyWorkersEndWhenTheirParentIsKilledAndTheNextRunCleansUp() throws Exception {
    Process parent = startParent();
    List<ProcessHandle> workers = awaitBusyWorkers(parent);
    parent.destroyForcibly().waitFor();
    for (ProcessHandle worker : workers) {
      worker.onExit().get(10, TimeUnit.SECONDS);
    }
    assertEquals(1, workFolders());
    Crew.start(CrewFixture.settings(1), temp).close();
    assertEquals(0, workFolders());
  }

  @Test
  void busyWorkersAndTheirFolderGoWhenTheParentIsTerminated() throws Exception {
    Process parent = startParent();
    List<ProcessHandle> workers = awaitBusyWorkers(parent);
    assertEquals(1, workFolders());
    parent.destroy();
    assertTrue(parent.waitFor(20, TimeUnit.SECONDS));
    for (ProcessHandle worker : workers) {
      worker.onExit().get(10, TimeUnit.SECONDS);
    }
    assertEquals(0, workFolders());
  }

  private Process startParent() throws Exception {
    return new ProcessBuilder(
            CrewFixture.settings(1).javaExecutable().toString(),
            "-cp",
            System.getProperty("java.class.path"),
            CrewParent.class.getName(),
            temp.toString())
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private List<ProcessHandle> awaitBusyWorkers(Process parent) throws Exception {
    List<Path> markers = Stream.of("hang-1.begun", "hang-2.begun").map(temp::resolve).toList();
    for (int i = 0; i < WAITS_MAX && !markers.stream().allMatch(Files::exists); i++) {
      assertTrue(parent.isAlive(), "the parent ended by itself");
      Thread.sleep(WAIT_MILLISECONDS);
    }
    List<ProcessHandle> workers = parent.descendants().toList();
    assertEquals(2, workers.size());
    return workers;
  }

  private long workFolders() throws Exception {
    try (Stream<Path> files = Files.list(temp)) {
      return files.filter(f -> f.getFileName().toString().startsWith("rondure-work-")).count();
    }
  }
}
