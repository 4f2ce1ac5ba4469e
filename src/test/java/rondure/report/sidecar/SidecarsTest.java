package rondure.report.sidecar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.blur.Cause;
import rondure.night.Grade;
import rondure.report.OutputFolder;

/** Sidecars as files: what is made, what is left as it was, and what a second run does. */
class SidecarsTest {
  @TempDir Path home;
  private Path folder;
  private GradedNight night;

  @BeforeEach
  void aNight() throws IOException {
    folder = Files.createDirectory(home.resolve("night"));
    night =
        new GradedNight(folder)
            .frame(Grade.SET_ASIDE, Cause.TRIPOD, "1.nef", "1.jpg")
            .frame(Grade.KEEP, Cause.NONE, "2.nef")
            .frame(Grade.KEEP, Cause.LENS, "3.nef")
            .undecided(Grade.LOOK_CLOSER, "4.nef")
            .frame(null, "5.nef");
    Files.writeString(folder.resolve("3.xmp"), Packets.rich());
  }

  /** Every file below the folder with its bytes and time. */
  private Map<String, String> state() throws IOException {
    Map<String, String> state = new TreeMap<>();
    try (Stream<Path> all = Files.walk(home)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String bytes = Arrays.toString(Files.readAllBytes(file));
        state.put(home.relativize(file).toString(), Files.getLastModifiedTime(file) + bytes);
      }
    }
    return state;
  }

  private RdfReading sidecar(String name) throws Exception {
    return RdfReading.of(folder.resolve(name));
  }

  @Test
  void gradesAndCausesBecomeRatingsAndKeywords() throws Exception {
    SidecarSummary summary = night.beside();
    assertEquals(1.0, sidecar("1.xmp").rating().orElseThrow());
    assertEquals(List.of("Rondure set aside", "Rondure tripod"), sorted("1.xmp"));
    assertEquals(5.0, sidecar("2.xmp").rating().orElseThrow());
    assertEquals(
        List.of("Rondure best of scene", "Rondure keep", "Rondure nothing softened"),
        sorted("2.xmp"));
    assertEquals(3.0, sidecar("3.xmp").rating().orElseThrow(), "the rating that was there");
    assertTrue(sorted("3.xmp").containsAll(List.of("Rondure keep", "Rondure lens edges", "hut")));
    assertEquals(2.0, sidecar("4.xmp").rating().orElseThrow());
    assertEquals(List.of("Rondure look closer", "Rondure undecided"), sorted("4.xmp"));
    assertFalse(Files.exists(folder.resolve("5.xmp")), "a frame without a grade gets none");
    assertEquals(List.of(), summary.troubles());
    assertEquals(
        List.of(3, 1, 0, 1),
        List.of(summary.made(), summary.changed(), summary.unchanged(), summary.ratingsKept()));
  }

  private List<String> sorted(String name) throws Exception {
    return sidecar(name).keywords().stream().sorted().toList();
  }

  @Test
  void thePicturesKeepTheirBytesAndTimes() throws IOException {
    Map<String, String> before = state();
    night.beside();
    Map<String, String> after = state();
    for (String file : before.keySet()) {
      if (!file.endsWith(".xmp")) {
        assertEquals(before.get(file), after.get(file), file);
      }
    }
  }

  @Test
  void aSecondRunWritesNothing() throws IOException {
    night.beside();
    Map<String, String> once = state();
    SidecarSummary again = night.beside();
    assertEquals(once, state());
    assertEquals(List.of(0, 0, 4), List.of(again.made(), again.changed(), again.unchanged()));
  }

  @Test
  void theBackupIsWhatWasThereBeforeTheFirstRun() throws IOException {
    night.beside();
    Path backup = folder.resolve("3.xmp" + SidecarWriter.BACKUP);
    assertEquals(Packets.rich(), Files.readString(backup));
    assertFalse(Files.exists(folder.resolve("2.xmp" + SidecarWriter.BACKUP)));
    new GradedNight(folder).frame(Grade.SET_ASIDE, "3.nef").beside();
    new GradedNight(folder).frame(Grade.KEEP, "3.nef").beside(true);
    assertEquals(Packets.rich(), Files.readString(backup));
    assertTrue(Files.readString(folder.resolve("3.xmp")).contains("xmp:Rating=\"5\""));
  }

  @Test
  void aSidecarKeepsItsPermissions() throws IOException {
    Path sidecar = folder.resolve("3.xmp");
    assumeTrue(
        sidecar.getFileSystem().supportedFileAttributeViews().contains("posix"),
        "skipped: this file system has no permissions");
    Files.setPosixFilePermissions(sidecar, PosixFilePermissions.fromString("rw-r-----"));
    night.beside();
    assertEquals(
        "rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(sidecar)));
  }

  @Test
  void aRehearsalWritesNothingAndSaysWhatItWouldWrite() throws IOException {
    Map<String, String> before = state();
    Sidecars sidecars =
        new Sidecars(night.book(), night.files(), new SidecarSettings(true, true, false, true));
    sidecars.rehearse();
    sidecars.writeBeside();
    assertEquals(before, state());
    List<String> findings = sidecars.summary().findings();
    assertEquals(8, findings.size());
    assertTrue(
        findings.contains(
            "1.xmp: new file; rating 1; new keywords Rondure set aside, Rondure tripod"),
        findings.toString());
    assertTrue(
        findings.contains(
            "3.xmp: new keywords Rondure keep, Rondure lens edges; no more Rondure look closer;"
                + " rating 3 stays"),
        findings.toString());
  }

  @Test
  void theResultsHoldWhatIsBesideThePicturesWithTheMarksMergedIn() throws Exception {
    Map<String, String> before = state();
    Path results = home.resolve("results");
    writeInto(results, night);
    RdfReading merged = RdfReading.of(results.resolve("sidecars/3.xmp"));
    assertEquals(3.0, merged.rating().orElseThrow());
    assertTrue(merged.keywords().containsAll(List.of("hut", "Rondure keep")));
    assertEquals(List.of("1.xmp", "2.xmp", "3.xmp", "4.xmp"), names(results.resolve("sidecars")));
    Map<String, String> after = state();
    after.keySet().removeIf(file -> file.startsWith("results"));
    assertEquals(before, after);
  }

  /** The results are the same whether the sidecars beside the pictures were written or not. */
  @Test
  void theResultsDoNotDependOnEarlierRuns() throws Exception {
    writeInto(home.resolve("one"), night);
    night.beside();
    writeInto(home.resolve("two"), night);
    for (String name : names(home.resolve("one/sidecars"))) {
      assertEquals(
          Files.readString(home.resolve("one/sidecars").resolve(name)),
          Files.readString(home.resolve("two/sidecars").resolve(name)),
          name);
    }
  }

  @Test
  void sidecarsOfAnEarlierRunDoNotStayInTheResults() throws Exception {
    Path results = home.resolve("results");
    writeInto(results, new GradedNight(folder).frame(Grade.KEEP, "deep/er/6.nef"));
    assertEquals(List.of("deep"), names(results.resolve("sidecars")));
    writeInto(results, night);
    assertEquals(List.of("1.xmp", "2.xmp", "3.xmp", "4.xmp"), names(results.resolve("sidecars")));
    assertTrue(Files.exists(results.resolve(OutputFolder.MARKER)));
  }

  private void writeInto(Path results, GradedNight graded) throws Exception {
    try (OutputFolder output = OutputFolder.named(results)) {
      new Sidecars(graded.book(), graded.files(), new SidecarSettings(true, false, false, false))
          .writeInto(output);
      output.publish();
    }
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void whatAKilledRunLeftHalfWrittenIsCleared() throws IOException {
    long unused = 999_999_999_999L;
    Path left = Files.writeString(folder.resolve(".rondure-partial-" + unused), "<x:xmp");
    Path ours = Files.writeString(folder.resolve(".rondure-partial-notes"), "a person's");
    night.beside();
    assertFalse(Files.exists(left));
    assertTrue(Files.exists(ours));
    assertTrue(Files.readString(folder.resolve("2.xmp")).endsWith("</x:xmpmeta>\n"));
    Path again = Files.writeString(folder.resolve(".rondure-partial-" + unused), "<x:xmp");
    Path named = Files.createDirectory(folder.resolve(".rondure-partial-" + (unused - 1)));
    assertEquals(0, night.beside().made());
    assertFalse(Files.exists(again), "also where nothing is to be written");
    assertTrue(Files.exists(named), "no file of ours");
  }

  /** Whoever looks at any moment finds the whole file of one state or of the other. */
  @Test
  void aSidecarIsNeverSeenHalfWritten() throws Exception {
    Path sidecar = folder.resolve("3.xmp");
    GradedNight keep = new GradedNight(folder).frame(Grade.KEEP, Cause.NONE, "3.nef");
    GradedNight aside = new GradedNight(folder).frame(Grade.SET_ASIDE, Cause.HAZE, "3.nef");
    keep.beside();
    AtomicBoolean done = new AtomicBoolean();
    CompletableFuture<Set<String>> watcher =
        CompletableFuture.supplyAsync(() -> everythingSeen(sidecar, done));
    for (int i = 0; i < 60; i++) {
      (i % 2 == 0 ? aside : keep).beside();
    }
    done.set(true);
    assertEquals(2, watcher.get().size());
  }

  private static Set<String> everythingSeen(Path sidecar, AtomicBoolean done) {
    Set<String> seen = new HashSet<>();
    while (!done.get()) {
      try {
        seen.add(Files.readString(sidecar));
      } catch (IOException e) {
        seen.add("missing: " + e);
      }
    }
    return seen;
  }

  @Test
  void aStoppedRunWritesNoMore() throws IOException {
    Map<String, String> before = state();
    Thread.currentThread().interrupt();
    assertThrows(InterruptedIOException.class, night::beside);
    assertTrue(Thread.interrupted());
    assertEquals(before, state());
  }

  @Test
  void aFrameThatLostItsGradeLosesOurMarks() throws Exception {
    night.beside();
    SidecarSummary summary =
        new GradedNight(folder).frame(null, "2.nef").frame(null, "5.nef").beside();
    assertEquals(1, summary.changed());
    assertEquals(List.of(), sidecar("2.xmp").keywords());
    assertTrue(sidecar("2.xmp").rating().isEmpty());
  }

  @Test
  void onlyOptionsThatGoTogetherAreTaken() {
    assertThrows(
        IllegalArgumentException.class, () -> new SidecarSettings(false, false, true, false));
    assertThrows(
        IllegalArgumentException.class, () -> new SidecarSettings(false, false, false, true));
  }
}
