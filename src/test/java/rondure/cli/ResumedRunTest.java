package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/** A night is measured once: later runs go on from what is kept, to the same bytes. */
class ResumedRunTest {
  private static final FileTime LONG_AGO = FileTime.fromMillis(1_000_000_000_000L);

  @TempDir Path home;
  private Path night;
  private Path out;

  @BeforeEach
  void aNightThatWasMeasured() throws IOException {
    night = SmallNight.tiffs(home.resolve("night"), 2);
    SmallNight.copy(OutputFormat.TIFF, 3, night.resolve("night_3.tif"));
    SmallNight.copy(OutputFormat.JPEG, 4, night.resolve("card/four.jpg"));
    Files.write(night.resolve("card/cut.tif"), Arrays.copyOf(tiff(2), 5000));
    out = home.resolve("out");
    run(out);
    for (Path record : Records.files(out)) {
      Files.setLastModifiedTime(record, LONG_AGO);
    }
  }

  private static byte[] tiff(int number) throws IOException {
    return SmallNight.bytes(OutputFormat.TIFF, number);
  }

  private Run run(Path output, Object... options) {
    Object[] usual = {"report", "--star-table", "--workers", 2, "--out", output, night};
    Object[] all = Arrays.copyOf(usual, usual.length + options.length);
    System.arraycopy(options, 0, all, usual.length, options.length);
    Run run = Run.of(all);
    assertEquals(1, run.code(), run.toString());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().startsWith("card/cut.tif: "), run.err());
    return run;
  }

  /** Runs again and compares with a run that has nothing to go on from. */
  private void assertGoesOn(String before, Object... options) throws IOException {
    Run again = run(out, options);
    assertTrue(again.out().contains(before), again.out());
    Path fresh = home.resolve("fresh");
    assertTrue(!run(fresh, options).out().contains("measured before"));
    Outputs.assertSame(fresh, out);
    assertEquals(Run.names(fresh.resolve("measured")), Run.names(out.resolve("measured")));
  }

  private int untouchedRecords() throws IOException {
    int count = 0;
    for (Path record : Records.files(out)) {
      count += Files.getLastModifiedTime(record).equals(LONG_AGO) ? 1 : 0;
    }
    return count;
  }

  @Test
  void aSecondRunMeasuresNothing() throws IOException {
    assertGoesOn("Of 5 frames, 4 were measured before.");
    assertEquals(4, untouchedRecords());
  }

  @Test
  void otherWordsPagesAndFactsNeedNoNewMeasuring() throws IOException {
    assertGoesOn(
        "Of 5 frames, 4 were measured before.",
        "--wording",
        "teacher",
        "--page",
        "letter",
        "--focal-length",
        14,
        "--clock-shift",
        "Larkmoor Vesper One=+01:00:00");
    assertEquals(4, untouchedRecords());
  }

  @Test
  void onlyNewAndChangedFilesAreMeasuredAndRenamedOnesAreNot() throws IOException {
    Files.move(night.resolve("night_1.tif"), night.resolve("card/another name.TIF"));
    byte[] changed = tiff(2);
    changed[changed.length / 2] ^= 1;
    Path file = night.resolve("night_2.tif");
    FileTime time = Files.getLastModifiedTime(file);
    Files.write(file, changed);
    Files.setLastModifiedTime(file, time);
    SmallNight.copy(OutputFormat.JPEG, 3, night.resolve("new.jpg"));
    assertGoesOn("Of 6 frames, 3 were measured before.");
    assertEquals(3, untouchedRecords());
    assertEquals(5, Records.in(out));
  }

  @Test
  void damagedRecordsAreMeasuredAgain() throws IOException {
    List<Path> records = Records.files(out);
    byte[] bytes = Files.readAllBytes(records.get(0));
    bytes[bytes.length - 5] ^= 64;
    Files.write(records.get(0), bytes);
    Files.write(records.get(1), Arrays.copyOf(Files.readAllBytes(records.get(1)), 1000));
    Files.copy(records.get(3), home.resolve("other"));
    Files.write(records.get(2), Files.readAllBytes(home.resolve("other")));
    Files.writeString(records.get(0).resolveSibling("letter.txt"), "mine");
    Run again = run(out);
    assertTrue(again.out().contains("Of 5 frames, 1 was measured before."), again.out());
    assertEquals("mine", Files.readString(out.resolve("measured/letter.txt")));
    Files.delete(out.resolve("measured/letter.txt"));
    assertGoesOn("Of 5 frames, 4 were measured before.");
  }

  /** A twin that stood in for an unreadable file stands in for it again. */
  @Test
  void aCopyThatStoodInIsNotMeasuredAgain() throws IOException {
    SmallNight.copy(OutputFormat.JPEG, 2, night.resolve("card/cut.jpg"));
    Object[] command = {"report", "--workers", 1, "--entries", "none", "--out", out, night};
    Run first = Run.of(command);
    assertEquals(0, first.code(), first.toString());
    assertEquals("measured", Run.frames(out).get("card/cut.jpg").get("status").asText());
    FileTime time = FileTime.fromMillis(1);
    for (Path record : Records.files(out)) {
      Files.setLastModifiedTime(record, time);
    }
    String json = Files.readString(out.resolve("night.json"));
    assertEquals(0, Run.of(command).code());
    assertEquals(json, Files.readString(out.resolve("night.json")));
    assertEquals(5, Records.in(out));
    for (Path record : Records.files(out)) {
      assertEquals(time, Files.getLastModifiedTime(record));
    }
  }
}
