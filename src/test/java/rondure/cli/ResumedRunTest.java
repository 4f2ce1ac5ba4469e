package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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
  void aNight() throws IOException {
    night = SmallNight.tiffs(home.resolve("night"), 2);
    Files.write(night.resolve("night_2.tif"), tiffWith(1));
    SmallNight.copy(OutputFormat.JPEG, 4, night.resolve("card/four.jpg"));
    Files.write(night.resolve("card/cut.tif"), Arrays.copyOf(tiffWith(0), 5000));
    out = home.resolve("out");
  }

  /** What follows the picture in a TIFF file is not looked at. */
  private static byte[] tiffWith(int lastByte) throws IOException {
    byte[] tiff = SmallNight.bytes(OutputFormat.TIFF, 2);
    byte[] longer = Arrays.copyOf(tiff, tiff.length + 1);
    longer[tiff.length] = (byte) lastByte;
    return longer;
  }

  private Run run(Path output, Object... options) {
    Object[] usual = {"report", "--star-table", "--workers", 1, "--out", output, night};
    Object[] all = Arrays.copyOf(usual, usual.length + options.length);
    System.arraycopy(options, 0, all, usual.length, options.length);
    Run run = Run.of(all);
    assertEquals(1, run.code(), run.toString());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().startsWith("card/cut.tif: "), run.err());
    return run;
  }

  private Map<String, byte[]> first(Object... options) throws IOException {
    Run run = run(out, options);
    assertFalse(run.out().contains("measured before"), run.out());
    for (Path record : Records.files(out)) {
      Files.setLastModifiedTime(record, LONG_AGO);
    }
    return Outputs.of(out);
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
    Map<String, byte[]> first = first();
    Run again = run(out);
    assertTrue(again.out().contains("Of 4 frames, 3 were measured before."), again.out());
    assertEquals(3, untouchedRecords());
    Outputs.assertSame(first, out);
  }

  /** Other words, paper and facts need no new measuring, nor does another name. */
  @Test
  void onlyNewAndChangedFilesAreMeasured() throws IOException {
    first("--entries", "none");
    Files.move(night.resolve("night_1.tif"), night.resolve("card/another name.TIF"));
    Path changed = night.resolve("night_2.tif");
    FileTime time = Files.getLastModifiedTime(changed);
    Files.write(changed, tiffWith(2));
    Files.setLastModifiedTime(changed, time);
    SmallNight.copy(OutputFormat.JPEG, 3, night.resolve("new.jpg"));
    Object[] options = {
      "--wording", "teacher", "--page", "letter", "--focal-length", 14, "--temperature", -3
    };
    Run again = run(out, options);
    assertTrue(again.out().contains("Of 5 frames, 2 were measured before."), again.out());
    assertEquals(2, untouchedRecords());
    Path fresh = home.resolve("fresh");
    run(fresh, options);
    Outputs.assertSame(Outputs.of(fresh), out);
    assertEquals(Run.names(fresh.resolve("measured")), Run.names(out.resolve("measured")));
  }

  @Test
  void damagedRecordsAreMeasuredAgain() throws IOException {
    Map<String, byte[]> first = first();
    List<Path> records = Records.files(out);
    List<byte[]> sound = new ArrayList<>();
    for (Path record : records) {
      sound.add(Files.readAllBytes(record));
    }
    byte[] bytes = sound.get(0).clone();
    bytes[bytes.length - 5] ^= 64;
    Files.write(records.get(0), bytes);
    Files.write(records.get(1), Arrays.copyOf(sound.get(1), 1000));
    Files.write(records.get(2), sound.get(0));
    Files.writeString(out.resolve("measured/letter.txt"), "mine");
    Run again = run(out);
    assertFalse(again.out().contains("measured before"), again.out());
    Outputs.assertSame(first, out);
    assertEquals("mine", Files.readString(out.resolve("measured/letter.txt")));
    for (int i = 0; i < 3; i++) {
      assertArrayEquals(sound.get(i), Files.readAllBytes(records.get(i)));
    }
  }

  /** A twin that stood in for an unreadable file stands in for it again. */
  @Test
  void aCopyThatStoodInIsNotMeasuredAgain() throws IOException {
    Path pair = Files.createDirectory(home.resolve("pair"));
    Files.move(night.resolve("card/cut.tif"), pair.resolve("a.tif"));
    SmallNight.copy(OutputFormat.JPEG, 2, pair.resolve("a.jpg"));
    assertEquals(0, Run.report(out, pair).code());
    assertEquals("measured", Run.frames(out).get("a.jpg").get("status").asText());
    Map<String, byte[]> first = Outputs.of(out);
    Files.setLastModifiedTime(Records.files(out).get(0), LONG_AGO);
    assertEquals(0, Run.report(out, pair).code());
    Outputs.assertSame(first, out);
    assertEquals(1, Records.in(out));
    assertEquals(1, untouchedRecords());
  }
}
