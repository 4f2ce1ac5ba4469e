package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * SIGKILL at any moment, then the same command again: every file that an undisturbed run leaves,
 * byte for byte, and no other; no worker that lives on, no lock that stands in the way, no
 * temporary file anywhere.
 */
class KilledRunTest {
  private static final int RANDOM_MOMENTS = 20;
  private static final int KILLED = 137;

  /** Of a program that was asked to end before it could listen. */
  private static final int TERMINATED = 143;

  /** Nights that share the kills at file operations among them. */
  private static final int NIGHTS = 8;

  @TempDir Path home;

  @BeforeAll
  static void signalsAreThoseOfUnix() {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "skipped: no system with signals");
  }

  /** A command over a night of its own; nights and results of all trials are alike. */
  private Trial trial(String name) throws IOException {
    return Trial.in(home, name);
  }

  /** Runs to the end; answers with what it said. */
  private String finished(Trial trial) throws IOException, InterruptedException {
    ChildRun child = trial.start();
    Run run = child.end();
    assertEquals(0, run.code(), run.toString());
    assertEquals(List.of(Trial.LEFT_ALONE), run.errLines());
    assertEquals(List.of(), child.temporaryFiles());
    return run.out();
  }

  private boolean killed(Trial trial, Function<ChildRun, BooleanSupplier> moment) throws Exception {
    ChildRun child = trial.start();
    child.await(moment.apply(child));
    return killed(child);
  }

  /**
   * Kills a run and waits until nothing of it lives.
   *
   * @return false when it was over before
   */
  private boolean killed(ChildRun child) throws Exception {
    List<ProcessHandle> workers = child.signal("KILL");
    int code = child.end().code();
    for (ProcessHandle worker : workers) {
      worker.onExit().get(20, TimeUnit.SECONDS);
    }
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (processesOfOurs() > 0) {
      assertTrue(System.nanoTime() < deadline, "a worker lives on");
      Thread.sleep(20);
    }
    assertTrue(code == KILLED || code == 0, "exit code " + code);
    return code == KILLED;
  }

  /** Workers know the temporary folder of their run; a system may hide command lines. */
  private long processesOfOurs() {
    String place = home.resolve("tmp").toString();
    return ProcessHandle.allProcesses()
        .filter(one -> one.info().commandLine().orElse("").contains(place))
        .count();
  }

  @Test
  void aRunThatWasKilledAgainAndAgainGoesOnToTheSameBytes() throws Exception {
    Trial expected = trial("expected");
    finished(expected);
    Trial trial = trial("killed");
    Path out = trial.out();
    assertTrue(killed(trial, child -> () -> Files.exists(out.resolve(".rondure-lock"))));
    assertTrue(killed(trial, child -> () -> Records.in(out) > 0));
    int kept = Records.in(out);
    assertTrue(kept > 0 && kept < Trial.FRAMES, kept + " records");
    assertTrue(killed(trial, child -> () -> Records.in(out) > kept));
    assertTrue(killed(trial, child -> () -> Files.exists(out.resolve(".rondure-partial"))));
    String said = finished(trial);
    assertTrue(said.contains("Of 6 frames, 6 were measured before."), said);
    trial.assertSame(expected);
    assertEquals(Trial.FRAMES, Records.in(out));
  }

  /**
   * Asked to end at moments drawn over the whole length of a run, each for a night of its own: ends
   * in good order, and the same command goes on from there.
   */
  @Test
  @Tag("thorough")
  void aRunThatWasTerminatedAtAnyMomentGoesOnToTheSameBytes() throws Exception {
    Trial expected = trial("expected");
    long begunNanos = System.nanoTime();
    finished(expected);
    long lengthNanos = System.nanoTime() - begunNanos;
    Random random = new Random(20261126);
    int stopped = 0;
    for (int i = 0; i < RANDOM_MOMENTS / 2; i++) {
      Trial trial = trial("moment" + i);
      long moment = System.nanoTime() + (long) (random.nextDouble() * lengthNanos);
      ChildRun child = trial.start();
      child.await(() -> child.isOver() || System.nanoTime() - moment >= 0);
      List<ProcessHandle> workers = child.signal("TERM");
      Run run = child.end();
      for (ProcessHandle worker : workers) {
        worker.onExit().get(20, TimeUnit.SECONDS);
      }
      assertTrue(List.of(0, 130, TERMINATED).contains(run.code()), run.toString());
      if (run.code() == 130) {
        stopped++;
        assertEquals(List.of(Troubles.STOPPED), run.errLines());
      }
      assertEquals(List.of(), run.code() == TERMINATED ? List.of() : child.temporaryFiles());
      System.out.printf("moment %d: exit code %d%n", i, run.code());
      finished(trial);
      trial.assertSame(expected);
    }
    assertTrue(stopped > 0, "no run was stopped");
  }

  /** Moments drawn over the whole length of a run, each for a night of its own. */
  @Test
  @Tag("thorough")
  void aRunThatWasKilledAtAnyMomentGoesOnToTheSameBytes() throws Exception {
    Trial expected = trial("expected");
    long begunNanos = System.nanoTime();
    finished(expected);
    long lengthNanos = System.nanoTime() - begunNanos;
    Random random = new Random(20261125);
    int kills = 0;
    for (int i = 0; i < RANDOM_MOMENTS; i++) {
      Trial trial = trial("moment" + i);
      long startNanos = System.nanoTime();
      long moment = startNanos + (long) (random.nextDouble() * lengthNanos);
      boolean inTime =
          killed(trial, child -> () -> child.isOver() || System.nanoTime() - moment >= 0);
      int kept = Records.in(trial.out());
      kills += inTime ? 1 : 0;
      lengthNanos = inTime ? lengthNanos : System.nanoTime() - startNanos;
      String said = finished(trial);
      assertEquals(kept > 0, said.contains("measured before"), said);
      trial.assertSame(expected);
      System.out.printf("moment %d: killed %b, %d records kept%n", i, inTime, kept);
    }
    assertTrue(kills >= RANDOM_MOMENTS / 2, kills + " runs were killed in time");
  }

  /**
   * Killed exactly before an operation on files: making a folder, opening, writing, moving,
   * removing a file, each before the first time that it is done, and amid the moves. One worker, so
   * that they come in one order; a night is killed several times, at later and later operations,
   * before it may go on to its end.
   */
  @Test
  @Tag("thorough")
  void aRunThatWasKilledBetweenTwoFileOperationsGoesOnToTheSameBytes() throws Exception {
    Trial expected = trial("expected");
    List<String> operations = new ArrayList<>();
    try (FileOperations watched = FileOperations.listening()) {
      ChildRun child = expected.start(watched.javaOption());
      watched.follow(operations::add);
      assertEquals(0, child.end().code());
    }
    List<Moment> moments = moments(operations);
    int kills = 0;
    for (int i = 0; i < NIGHTS; i++) {
      Trial trial = trial("night" + i);
      for (int at = i; at < moments.size(); at += NIGHTS) {
        boolean killed = killedBefore(trial, moments.get(at));
        kills += killed ? 1 : 0;
        System.out.println(i + (killed ? ": killed before " : ": over before ") + moments.get(at));
      }
      finished(trial);
      trial.assertSame(expected);
    }
    assertTrue(kills >= 0.8 * moments.size(), kills + " kills");
  }

  /**
   * Before an operation.
   *
   * @param time its how-manieth time in the run, from 1
   */
  private record Moment(String operation, int time) {}

  /** The first time that anything is done, and the middle one of several moves, in order. */
  private static List<Moment> moments(List<String> operations) {
    Map<String, Integer> times = new HashMap<>();
    List<Moment> moments = new ArrayList<>();
    for (String operation : operations) {
      int time = times.merge(operation, 1, Integer::sum);
      int all = Collections.frequency(operations, operation);
      if (time == 1 || operation.startsWith("move ") && time == 1 + all / 2) {
        moments.add(new Moment(operation, time));
      }
    }
    return moments;
  }

  /**
   * False when the command came to its end, since what an earlier run did need not be done again.
   */
  private boolean killedBefore(Trial trial, Moment moment) throws Exception {
    List<String> done = new ArrayList<>();
    try (FileOperations watched = FileOperations.listening()) {
      ChildRun child = trial.start(watched.javaOption());
      watched.follow(
          what -> {
            done.add(what);
            return Collections.frequency(done, moment.operation()) < moment.time();
          });
      return killed(child);
    }
  }
}
