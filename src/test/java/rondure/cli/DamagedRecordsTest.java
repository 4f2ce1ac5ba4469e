package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/**
 * Kept measurements that something happened to: measured again, never trusted, to the same bytes.
 */
class DamagedRecordsTest {
  private static final int FRAMES = 10;
  private static final int VERSION_AT = 11;
  private static final int DIGEST_AT = 44;
  private static final int PACKED_AT = 76;

  @TempDir Path home;
  private Path night;
  private Path out;
  private Map<String, byte[]> expected;
  private final List<byte[]> sound = new ArrayList<>();

  @BeforeEach
  void aMeasuredNight() throws IOException {
    night = home.resolve("night");
    for (int i = 1; i <= FRAMES; i++) {
      Path frame = night.resolve("frame" + i + ".tif");
      SmallNight.copy(OutputFormat.TIFF, 1 + i % SmallNight.FRAMES, frame);
      Files.write(frame, new byte[] {(byte) i}, StandardOpenOption.APPEND);
    }
    out = home.resolve("out");
    assertEquals(0, run().code());
    expected = Outputs.of(out);
    for (Path record : records()) {
      sound.add(Files.readAllBytes(record));
    }
    assertEquals(FRAMES, sound.size());
  }

  private Run run() {
    return Run.report(out, "--star-table", night);
  }

  private List<Path> records() throws IOException {
    return Records.files(out);
  }

  /** Another version of the format with a checksum that is right. */
  private static byte[] ofVersion(int version, byte[] record) throws Exception {
    byte[] other = record.clone();
    other[VERSION_AT] = (byte) version;
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    digest.update(other, 0, DIGEST_AT);
    digest.update(other, PACKED_AT, other.length - PACKED_AT);
    System.arraycopy(digest.digest(), 0, other, DIGEST_AT, PACKED_AT - DIGEST_AT);
    return other;
  }

  private static byte[] flipped(byte[] record, int bit) {
    byte[] other = record.clone();
    other[bit / 8] ^= (byte) (1 << bit % 8);
    return other;
  }

  @Test
  void everyKindOfDamageIsMeasuredAgain() throws Exception {
    List<Path> records = records();
    byte[] one = sound.get(0);
    assertArrayEquals(one, ofVersion(one[VERSION_AT], one), "the format is the one known here");
    byte[][] bad = {
      Arrays.copyOf(one, 1000),
      flipped(sound.get(1), 8 * 20),
      flipped(sound.get(2), 8 * sound.get(2).length - 3),
      ofVersion(0, sound.get(3)),
      ofVersion(2, sound.get(4)),
      sound.get(6),
      sound.get(5),
      new byte[0],
      Arrays.copyOf(sound.get(8), sound.get(8).length + 1)
    };
    for (int i = 0; i < bad.length; i++) {
      Files.write(records.get(i), bad[i]);
    }
    try (RandomAccessFile huge = new RandomAccessFile(records.get(9).toFile(), "rw")) {
      huge.setLength(1L << 40);
    }
    Run again = run();
    assertEquals("", again.err());
    assertFalse(again.out().contains("measured before"), again.out());
    Outputs.assertSame(expected, out);
    assertSoundAgain();
  }

  private void assertSoundAgain() throws IOException {
    List<Path> records = records();
    assertEquals(FRAMES, records.size());
    for (int i = 0; i < FRAMES; i++) {
      assertArrayEquals(sound.get(i), Files.readAllBytes(records.get(i)), "record " + i);
    }
  }

  /** What is no file of the program's is let be, and costs one sentence. */
  @Test
  void aLinkOrFolderInPlaceOfARecordIsNotUsed() throws IOException {
    Path link = records().get(0);
    Path elsewhere = home.resolve("elsewhere");
    Files.move(link, elsewhere);
    Files.createSymbolicLink(link, elsewhere);
    Path folder = records().get(1);
    Files.delete(folder);
    Files.createDirectory(folder);
    Run again = run();
    assertEquals(0, again.code());
    assertEquals(
        List.of(
            "Measurements cannot be kept in "
                + out.resolve("measured")
                + " (something else has its name); the next run measures those frames again."),
        again.errLines());
    assertTrue(again.out().contains("Of 10 frames, 8 were measured before."), again.out());
    Outputs.assertSame(expected, out);
    assertTrue(Files.isSymbolicLink(link));
    assertArrayEquals(sound.get(0), Files.readAllBytes(elsewhere));
    assertTrue(Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS));
  }

  /** Sound records that a link leads to are not read: nobody knows whose they are. */
  @Test
  void aLinkInPlaceOfTheFolderIsNotUsed() throws IOException {
    Path measured = out.resolve("measured");
    Path elsewhere = Files.move(measured, home.resolve("elsewhere"));
    Files.createSymbolicLink(measured, elsewhere);
    List<String> names = Run.names(elsewhere);
    Run again = run();
    assertEquals(0, again.code());
    assertEquals(
        List.of(
            "Measurements cannot be kept in "
                + measured
                + " (it is no folder of its own); the next run measures those frames again."),
        again.errLines());
    assertFalse(again.out().contains("measured before"), again.out());
    Outputs.assertSame(expected, out);
    assertTrue(Files.isSymbolicLink(measured));
    assertEquals(names, Run.names(elsewhere));
  }

  @Test
  void randomBitsThatFlipChangeNoDataFile() throws IOException {
    flipBits(new Random(20261126), 2);
  }

  @Test
  @Tag("thorough")
  void randomBitsThatFlipInManyRunsChangeNoDataFile() throws IOException {
    flipBits(new Random(20261127), 30);
  }

  private void flipBits(Random random, int runs) throws IOException {
    for (int i = 0; i < runs; i++) {
      int damaged = 0;
      for (int k = 0; k < FRAMES; k++) {
        int flips = random.nextInt(4);
        byte[] bytes = sound.get(k);
        for (int flip = 0; flip < flips; flip++) {
          bytes = flipped(bytes, random.nextInt(8 * bytes.length));
        }
        boolean changed = !Arrays.equals(bytes, sound.get(k));
        damaged += changed ? 1 : 0;
        Files.write(records().get(k), bytes);
      }
      Run again = run();
      assertEquals("", again.err());
      int left = FRAMES - damaged;
      String told = "Of 10 frames, " + left + (left == 1 ? " was" : " were") + " measured before.";
      assertEquals(left > 0, again.out().contains(told), again.out());
      Outputs.assertSame(expected, out);
      assertSoundAgain();
    }
  }
}
