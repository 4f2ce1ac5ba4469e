package rondure.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.crew.FrameMeasurement;
import rondure.crew.MeasureJob;
import rondure.crew.RandomRecords;
import rondure.crew.RecordJson;
import rondure.intake.ImageFormat;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

/** What is found again, what is not, and what becomes of the folder. */
class MeasurementStoreTest {
  private static final String DIGEST = "ab".repeat(32);
  private static final String OTHER = "cd".repeat(32);
  private static final StarSettings SETTINGS = StarSettings.defaults();

  @TempDir Path home;
  private final FrameMeasurement measured = new RandomRecords(new Random(7)).measurement(5);
  private final MeasureJob job = job("a.tif", ShotFacts.unknown(ImageFormat.TIFF));
  private Path place;
  private MeasurementStore store;

  private static MeasureJob job(String name, ShotFacts facts) {
    return new MeasureJob(Path.of(name), facts);
  }

  @BeforeEach
  void oneIsKept() {
    place = home.resolve("measured");
    store = MeasurementStore.open(place, SETTINGS);
    assertTrue(store.isEmpty());
    store.keep(job, DIGEST, measured);
    assertEquals(Optional.empty(), store.trouble());
  }

  private MeasurementStore reopened() {
    return MeasurementStore.open(place, SETTINGS);
  }

  private boolean isFound(MeasureJob sought, String digest, StarSettings settings) {
    return MeasurementStore.open(place, settings).find(sought, digest).isPresent();
  }

  private boolean isFound() {
    return isFound(job, DIGEST, SETTINGS);
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(place)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private Path record() throws IOException {
    assertEquals(1, names().size());
    return place.resolve(names().get(0));
  }

  @Test
  void aMeasurementIsFoundAgainBitForBitWithThePresentFacts() throws IOException {
    ShotFacts facts = job.facts();
    FrameMeasurement found = reopened().find(job, DIGEST).orElseThrow();
    FrameMeasurement expected =
        new FrameMeasurement(facts, measured.linearity(), measured.field(), measured.thumbnail());
    assertArrayEquals(RecordJson.write(expected), RecordJson.write(found));
    assertFalse(reopened().isEmpty());
  }

  @Test
  void whateverTheMeasurementFollowsFromTellsRecordsApart() {
    assertTrue(isFound(job("renamed elsewhere.TIF", job.facts()), DIGEST, SETTINGS));
    assertFalse(isFound(job, OTHER, SETTINGS));
    assertFalse(isFound(job("a.dng", job.facts()), DIGEST, SETTINGS));
    assertFalse(isFound(job("a", job.facts()), DIGEST, SETTINGS));
    assertFalse(isFound(job("a.tif", ShotFacts.unknown(ImageFormat.RAW)), DIGEST, SETTINGS));
    assertFalse(isFound(job, DIGEST, new StarSettings(64, 5, 18, 400, 400, 41, 1, 2.5)));
  }

  @Test
  void aRecordOfAnotherProgramIsNotFound() {
    RecordKey mine = RecordKey.of(DIGEST, job, SETTINGS, "one");
    RecordKey other = RecordKey.of(DIGEST, job, SETTINGS, "two");
    assertEquals(64, mine.digest().length());
    assertFalse(mine.digest().equals(other.digest()));
    assertEquals(mine.digest(), RecordKey.of(DIGEST, job, SETTINGS, "one").digest());
  }

  @Test
  void aDamagedRecordIsNotFoundAndIsReplaced() throws IOException {
    byte[] whole = Files.readAllBytes(record());
    Files.write(record(), new byte[whole.length]);
    assertFalse(isFound());
    Files.write(record(), new byte[0]);
    assertFalse(isFound());
    try (RandomAccessFile sparse = new RandomAccessFile(record().toFile(), "rw")) {
      sparse.setLength(1L << 40);
    }
    assertFalse(isFound());
    reopened().keep(job, DIGEST, measured);
    assertArrayEquals(whole, Files.readAllBytes(record()));
    assertTrue(isFound());
  }

  @Test
  void aLinkInPlaceOfARecordIsNeitherReadNorWritten() throws IOException {
    Path elsewhere = home.resolve("elsewhere");
    Path link = record();
    Files.move(link, elsewhere);
    Files.createSymbolicLink(link, elsewhere);
    byte[] before = Files.readAllBytes(elsewhere);
    assertFalse(isFound());
    MeasurementStore again = reopened();
    again.keep(job, DIGEST, measured);
    assertTrue(again.trouble().orElseThrow().contains("something else has its name"));
    again.forgetOthers();
    reopened().forgetOthers();
    assertTrue(Files.isSymbolicLink(link));
    assertArrayEquals(before, Files.readAllBytes(elsewhere));
  }

  @Test
  void aLinkOrFileInPlaceOfTheFolderIsNotUsed() throws IOException {
    Path link = Files.createSymbolicLink(home.resolve("link"), place);
    Path file = Files.writeString(home.resolve("file"), "mine");
    for (Path taken : List.of(link, file)) {
      MeasurementStore none = MeasurementStore.open(taken, SETTINGS);
      assertTrue(none.isEmpty());
      assertEquals(
          "Measurements cannot be kept in "
              + taken
              + " (it is no folder of its own); the next run measures those frames again.",
          none.trouble().orElseThrow());
      none.keep(job, OTHER, measured);
      assertEquals(Optional.empty(), none.find(job, DIGEST));
      none.forgetOthers();
    }
    assertEquals("mine", Files.readString(file));
    assertTrue(isFound());
  }

  /** As a dry run sees it, perhaps beside a run that is at work in the folder. */
  @Test
  void whoMayOnlyReadFindsWhatIsThereAndChangesNothing() throws IOException {
    Path begun = Files.writeString(place.resolve("2".repeat(64) + "-1.new"), "RNDF");
    List<String> before = names();
    MeasurementStore reading = MeasurementStore.readOnly(place, SETTINGS);
    assertTrue(reading.find(job, DIGEST).isPresent());
    reading.keep(job, OTHER, measured);
    assertEquals(Optional.empty(), reading.find(job, OTHER));
    MeasurementStore.readOnly(place, SETTINGS).forgetOthers();
    assertEquals(before, names());
    assertTrue(Files.exists(begun));
    assertEquals(Optional.empty(), reading.trouble());
    Path link = Files.createSymbolicLink(home.resolve("link"), place);
    for (Path none : List.of(link, home.resolve("nowhere"))) {
      MeasurementStore empty = MeasurementStore.readOnly(none, SETTINGS);
      assertTrue(empty.isEmpty());
      assertEquals(Optional.empty(), empty.find(job, DIGEST));
      assertEquals(Optional.empty(), empty.trouble());
    }
    assertFalse(Files.exists(home.resolve("nowhere")));
  }

  @Test
  void recordsThatTheNightNoLongerNeedsAreRemovedAndNothingElse() throws IOException {
    store.keep(job, OTHER, measured);
    String needed = record(DIGEST);
    String foreign = "0".repeat(64) + ".record";
    Files.writeString(place.resolve("letter.txt"), "mine");
    Files.writeString(place.resolve(foreign), "mine as well");
    Files.createDirectory(place.resolve("1".repeat(64) + ".record"));
    MeasurementStore next = reopened();
    assertTrue(next.find(job, DIGEST).isPresent());
    next.forgetOthers();
    List<String> left = List.of(foreign, "1".repeat(64) + ".record", needed, "letter.txt");
    assertEquals(left.stream().sorted().toList(), names());
  }

  private String record(String digest) throws IOException {
    return names().stream()
        .filter(name -> name.equals(keyOf(digest) + ".record"))
        .findFirst()
        .orElseThrow();
  }

  private String keyOf(String digest) {
    try {
      return RecordKey.of(digest, job, SETTINGS, MeasuringProgram.identity()).digest();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void whatAKilledRunBeganToWriteIsCleared() throws IOException {
    String begun = "2".repeat(64) + "-1.new";
    Files.writeString(place.resolve(begun), "RNDF");
    String foreign = "3".repeat(64) + "-1.new";
    Files.writeString(place.resolve(foreign), "mine");
    reopened();
    assertEquals(2, names().size());
    assertTrue(names().contains(foreign));
  }

  /** As when the disk fills up or the folder vanishes in the middle of a night. */
  @Test
  void aFolderThatVanishesCostsOneSentence() throws IOException {
    Files.delete(record());
    Files.delete(place);
    store.keep(job, DIGEST, measured);
    store.keep(job, OTHER, measured);
    assertEquals(Optional.empty(), store.find(job, DIGEST));
    store.forgetOthers();
    assertTrue(store.trouble().orElseThrow().contains("is not there any more"));
    assertFalse(Files.exists(place));
  }
}
