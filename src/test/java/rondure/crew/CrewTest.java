package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

class CrewTest {
  private static final String ADVICE = "; listed but not measured: export it as a 16-bit TIFF";

  @TempDir Path temp;

  @Test
  void outcomesComeInOrderAndDoNotDependOnTheNumberOfWorkers() throws Exception {
    String[] names = IntStream.range(0, 40).mapToObj(i -> "sound-" + i).toArray(String[]::new);
    names[7] = "problem-7";
    List<MeasureJob> jobs = CrewFixture.jobs(temp, names);
    for (int workers = 1; workers <= 2; workers++) {
      try (Crew crew = Crew.start(CrewFixture.settings(workers), temp)) {
        List<Outcome<FrameMeasurement>> outcomes = CrewFixture.outcomes(crew, jobs);
        assertEquals(40, outcomes.size());
        for (int i = 0; i < 40; i++) {
          if (i != 7) {
            assertMeasured(jobs.get(i), outcomes.get(i));
          }
        }
        assertEquals(new Outcome.Failed<>("the file is 0 bytes long"), outcomes.get(7));
      }
    }
  }

  @Test
  void factsAreReadInOrderAndABadFileCostsItselfOnly() throws Exception {
    List<Path> files = Stream.of("a", "crash", "b").map(temp::resolve).toList();
    List<Outcome<ShotFacts>> outcomes = new ArrayList<>();
    try (Crew crew = Crew.start(CrewFixture.settings(2), temp)) {
      crew.facts(files, (index, outcome) -> outcomes.add(outcome));
    }
    assertEquals(facts("a"), outcomes.get(0));
    assertEquals(
        new Outcome.Failed<>(
            "the reader of shot facts crashed (native fault) on this file" + ADVICE),
        outcomes.get(1));
    assertEquals(facts("b"), outcomes.get(2));
  }

  @Test
  void everyKindOfDeathCostsThatFrameOnlyAndIsNamed() throws Exception {
    List<MeasureJob> jobs =
        CrewFixture.jobs(
            temp,
            "sound-1",
            "crash",
            "sound-2",
            "exit",
            "garbage",
            "flood",
            "halfway",
            "killed",
            "bug",
            "nan",
            "once-1",
            "print",
            "complain",
            "sound-3");
    List<String> reasons;
    try (Crew crew = Crew.start(CrewFixture.settings(2), temp)) {
      reasons = CrewFixture.reasons(crew, jobs);
    }
    assertEquals("done", reasons.get(0));
    assertEquals("the decoder crashed (native fault) on this file" + ADVICE, reasons.get(1));
    assertEquals("done", reasons.get(2));
    assertEquals("the decoder ended without an answer (exit code 7)" + ADVICE, reasons.get(3));
    String damaged = "the decoder gave a damaged answer on this file" + ADVICE;
    assertEquals(damaged, reasons.get(4));
    assertEquals(damaged, reasons.get(5));
    assertEquals("the decoder ended without an answer (exit code 0)" + ADVICE, reasons.get(6));
    assertEquals(
        "the system stopped the decoder on this file, perhaps for lack of memory" + ADVICE,
        reasons.get(7));
    assertTrue(reasons.get(8).contains("a programmer's fault"), reasons.get(8));
    assertTrue(reasons.get(9).contains("levelCounts"), reasons.get(9));
    assertEquals(List.of("done", "done", "done", "done"), reasons.subList(10, 14));
  }

  /** What is kept must be true of the bytes that it is kept for. */
  @Test
  void measurementsAreToldWithTheDigestOfTheirBytesUnlessThoseChangedMeanwhile() throws Exception {
    List<MeasureJob> jobs = CrewFixture.jobs(temp, "sound-1", "grow-2", "missing-3", "sound-4");
    for (int i : List.of(0, 1, 3)) {
      Files.writeString(jobs.get(i).path(), "abc");
    }
    Map<Path, String> kept = new ConcurrentHashMap<>();
    List<Outcome<String>> digests = new ArrayList<>();
    try (Crew crew = Crew.start(CrewFixture.settings(2), temp)) {
      crew.digests(jobs, (index, outcome) -> digests.add(outcome));
      crew.measure(
          jobs,
          StarSettings.defaults(),
          (job, digest, measurement) -> kept.put(job.path(), digest),
          (index, outcome) -> {});
    }
    // FIPS 180-4, example of SHA-256.
    String abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    assertEquals(Map.of(jobs.get(0).path(), abc, jobs.get(3).path(), abc), kept);
    Outcome<String> known = new Outcome.Done<>(abc);
    assertEquals(List.of(known, known), digests.subList(0, 2));
    assertTrue(digests.get(2) instanceof Outcome.Failed, digests.get(2).toString());
  }

  @Test
  void aHangingDecoderIsEndedAfterItsTime() throws Exception {
    CrewSettings usual = CrewFixture.settings(1);
    CrewSettings hasty = new CrewSettings(1, 0, 2, 0, usual.tasksClass(), usual.javaExecutable());
    try (Crew crew = Crew.start(hasty, temp)) {
      List<String> reasons = CrewFixture.reasons(crew, CrewFixture.jobs(temp, "hang", "sound"));
      assertEquals("the decoder took longer than 3 s" + ADVICE, reasons.get(0));
      assertEquals("done", reasons.get(1));
    }
  }

  @Test
  void aFullHeapIsTriedOnceMoreWithTwiceTheMemoryAndThenNamed() throws Exception {
    try (Crew crew = Crew.start(CrewFixture.settings(1), temp)) {
      List<String> reasons = CrewFixture.reasons(crew, CrewFixture.jobs(temp, "hungry", "sound"));
      int heapMiB = 2 * CrewSettings.heapMiBFor(0.01);
      assertEquals(
          "the decoder needed more than " + heapMiB + " MiB of memory" + ADVICE, reasons.get(0));
      assertEquals("done", reasons.get(1));
    }
  }

  @Test
  void aSinkThatThrowsEndsTheBatchAndTheCrewCanWorkOn() throws Exception {
    String[] names = IntStream.range(0, 50).mapToObj(i -> "sound-" + i).toArray(String[]::new);
    try (Crew crew = Crew.start(CrewFixture.settings(1), temp)) {
      List<MeasureJob> jobs = CrewFixture.jobs(temp, names);
      assertThrows(
          IllegalStateException.class,
          () ->
              crew.measure(
                  jobs,
                  StarSettings.defaults(),
                  CrewFixture.NOTHING_KEPT,
                  (index, outcome) -> {
                    throw new IllegalStateException("full disk");
                  }));
      assertEquals(List.of("done"), CrewFixture.reasons(crew, jobs.subList(0, 1)));
    }
  }

  @Test
  void workersThatCannotStartAreAProblemOfTheCrew() throws Exception {
    CrewSettings usual = CrewFixture.settings(2);
    CrewSettings noTasks =
        new CrewSettings(2, 0, 5, 1, "rondure.NoSuchTasks", usual.javaExecutable());
    try (Crew crew = Crew.start(noTasks, temp)) {
      List<MeasureJob> jobs = CrewFixture.jobs(temp, "sound");
      CrewProblem problem = assertThrows(CrewProblem.class, () -> CrewFixture.reasons(crew, jobs));
      assertTrue(problem.getMessage().contains("NoSuchTasks"), problem.getMessage());
    }
    CrewSettings noJava =
        new CrewSettings(1, 0, 5, 1, TroubleTasks.class.getName(), temp.resolve("java"));
    assertThrows(CrewProblem.class, () -> Crew.start(noJava, temp));
  }

  /** As when the program is asked to end: what the killed workers left open is no answer. */
  @Test
  void aCrewThatIsClosedAtItsWorkIsStopped() throws Exception {
    Crew crew = Crew.start(CrewFixture.settings(2), temp);
    List<MeasureJob> jobs = CrewFixture.jobs(temp, "sound-1", "sound-2", "sound-3");
    List<Integer> delivered = new ArrayList<>();
    assertThrows(
        InterruptedException.class,
        () ->
            crew.measure(
                jobs,
                StarSettings.defaults(),
                CrewFixture.NOTHING_KEPT,
                (index, outcome) -> {
                  delivered.add(index);
                  crew.close();
                }));
    assertEquals(0, delivered.get(0));
    assertEquals(List.of(), workFolders());
  }

  @Test
  void nothingIsLeftAfterClosing() throws Exception {
    Crew crew = Crew.start(CrewFixture.settings(2), temp);
    CrewFixture.reasons(crew, CrewFixture.jobs(temp, "sound-1", "sound-2", "crash"));
    List<ProcessHandle> workers = ProcessHandle.current().children().toList();
    assertFalse(workers.isEmpty());
    assertEquals(1, workFolders().size());
    crew.close();
    assertTrue(workers.stream().noneMatch(ProcessHandle::isAlive));
    assertEquals(List.of(), workFolders());
  }

  private List<Path> workFolders() throws IOException {
    try (Stream<Path> files = Files.list(temp)) {
      return files.filter(f -> f.getFileName().toString().startsWith("rondure-work-")).toList();
    }
  }

  private static Outcome<ShotFacts> facts(String name) {
    return new Outcome.Done<>(new RandomRecords(new Random(name.hashCode())).facts());
  }

  private static void assertMeasured(MeasureJob job, Outcome<FrameMeasurement> outcome) {
    FrameMeasurement expected = TroubleTasks.expected(job.path(), job.facts());
    if (!(outcome instanceof Outcome.Done<FrameMeasurement> done)) {
      throw new AssertionError(job.path() + ": " + outcome);
    }
    FrameMeasurement actual = done.answer();
    assertEquals(expected.facts(), actual.facts());
    assertEquals(expected.field().stars(), actual.field().stars());
    assertEquals(expected.field().sky(), actual.field().sky());
    assertArrayEquals(expected.thumbnail().bytes(), actual.thumbnail().bytes());
  }
}
