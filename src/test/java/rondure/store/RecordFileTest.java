package rondure.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import rondure.crew.RandomRecords;
import rondure.crew.RecordJson;

/** A record comes back exactly or not at all. */
class RecordFileTest {
  private static final String KEY = "0123456789abcdef".repeat(4);
  private static final int HEAD_BYTES = 44;
  private static final int PACKED_AT = 76;

  private final KeptFrame frame = frame(new Random(5));
  private final byte[] record = packed(frame);

  private static KeptFrame frame(Random random) {
    return KeptFrame.of(new RandomRecords(random).measurement(1 + random.nextInt(30)));
  }

  private static byte[] packed(KeptFrame frame) {
    try {
      return RecordFile.pack(KEY, frame);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static void assertDoubted(byte[] bytes, String what) {
    assertThrows(RecordFile.Doubtful.class, () -> RecordFile.unpack(KEY, bytes), what);
  }

  @Property(tries = 50)
  void aFrameComesBackBitForBit(@ForAll Random random) throws IOException {
    KeptFrame sent = frame(random);
    KeptFrame back = RecordFile.unpack(KEY, packed(sent));
    assertEquals(sent.field().stars(), back.field().stars());
    assertEquals(sent.field().mask(), back.field().mask());
    assertArrayEquals(RecordJson.write(sent), RecordJson.write(back));
    assertArrayEquals(packed(sent), packed(back));
  }

  @Test
  void everyChangedByteIsNoticed() throws IOException {
    assertEquals(frame.linearity(), RecordFile.unpack(KEY, record).linearity());
    Random random = new Random(1);
    for (int i = 0; i < record.length; i += i < 2 * PACKED_AT ? 1 : 1 + random.nextInt(97)) {
      byte[] changed = record.clone();
      changed[i] ^= (byte) (1 << random.nextInt(8));
      assertDoubted(changed, "byte " + i);
    }
  }

  @Test
  void everyMissingOrAddedByteIsNoticed() {
    Random random = new Random(2);
    for (int i = 0; i < record.length; i += i < 2 * PACKED_AT ? 1 : 1 + random.nextInt(997)) {
      assertDoubted(Arrays.copyOf(record, i), "cut to " + i);
    }
    assertDoubted(Arrays.copyOf(record, record.length + 1), "one more");
    assertDoubted(new byte[RecordFile.PACKED_BYTES_MAX], "zeros");
    assertDoubted(new byte[RecordFile.PACKED_BYTES_MAX + 1], "too long");
  }

  @Test
  void anotherFrameOrAnotherVersionIsNoticedEvenWithARightChecksum() {
    String other = "f".repeat(64);
    assertThrows(RecordFile.Doubtful.class, () -> RecordFile.unpack(other, record));
    for (int version = 0; version < 3; version += 2) {
      byte[] changed = record.clone();
      changed[HEAD_BYTES - Sha256.BYTES - 1] = (byte) version;
      assertDoubted(sealed(changed), "version " + version);
    }
  }

  /** As whoever knows the format could write it: bounded and refused all the same. */
  @Test
  void hostileContentWithARightChecksumIsRefused() throws IOException {
    String json = new String(RecordJson.write(frame), StandardCharsets.UTF_8);
    assertEquals(frame.linearity(), RecordFile.unpack(KEY, holding(json)).linearity());
    String linearity = "\"linearity\":\"" + frame.linearity() + "\"";
    assertTrue(json.contains(linearity), "the words below are in the record");
    assertDoubted(holding(""), "nothing");
    assertDoubted(holding("null"), "null");
    assertDoubted(holding("[]"), "a list");
    assertDoubted(holding(json + "x"), "something behind");
    assertDoubted(holding(json.replace(linearity + ",", "")), "a part is missing");
    assertDoubted(holding(json.replace(linearity, "\"linearity\":null")), "a part is null");
    assertDoubted(holding(json.replace(linearity, linearity + ",\"more\":1")), "a part too many");
    assertDoubted(holding(json.replace("\"widthPx\":", "\"widthPx\":1e999,\"x\":")), "infinite");
    assertDoubted(holding(json.replaceFirst("\"meshPx\":\\d+", "\"meshPx\":-3")), "nonsense");
    assertDoubted(holding("{\"linearity\":" + "[".repeat(1_000_000)), "deep");
    assertDoubted(sealed(Arrays.copyOf(record, record.length + 7)), "behind the packed bytes");
    assertDoubted(sealed(Arrays.copyOf(record, record.length - 9)), "the end is missing");
    assertDoubted(sealed(Arrays.copyOf(record, PACKED_AT)), "nothing is packed");
  }

  /** A gigabyte of spaces packs into one megabyte; no more than the bound is ever unpacked. */
  @Test
  void whatUnpacksToMoreThanARecordEverHoldsIsRefused() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    byte[] spaces = " ".repeat(1 << 20).getBytes(StandardCharsets.UTF_8);
    try (DeflaterOutputStream out = new DeflaterOutputStream(packed)) {
      for (int i = 0; i < 1024; i++) {
        out.write(spaces);
      }
    }
    byte[] bomb = around(packed.toByteArray());
    assertTrue(bomb.length < RecordFile.PACKED_BYTES_MAX, "small enough to be tried");
    assertDoubted(bomb, "bomb");
  }

  /** zlib streams can ask for a dictionary, which nobody has. */
  @Test
  void aStreamThatNeverComesToItsEndIsRefused() {
    Deflater deflater = new Deflater();
    deflater.setDictionary("dictionary".getBytes(StandardCharsets.UTF_8));
    deflater.setInput("dictionary".getBytes(StandardCharsets.UTF_8));
    deflater.finish();
    byte[] block = new byte[100];
    byte[] packed = Arrays.copyOf(block, deflater.deflate(block));
    deflater.end();
    assertDoubted(around(packed), "dictionary");
  }

  @Test
  void aMeasurementThatCouldNotBeReadBackIsNotPacked() {
    KeptFrame large = KeptFrame.of(new RandomRecords(new Random(3)).measurement(40_000));
    assertThrows(IOException.class, () -> RecordFile.pack(KEY, large));
  }

  private byte[] holding(String json) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (DeflaterOutputStream out = new DeflaterOutputStream(packed)) {
      out.write(json.getBytes(StandardCharsets.UTF_8));
    }
    return around(packed.toByteArray());
  }

  private byte[] around(byte[] packed) {
    byte[] whole = Arrays.copyOf(record, PACKED_AT + packed.length);
    System.arraycopy(packed, 0, whole, PACKED_AT, packed.length);
    return sealed(whole);
  }

  /** The same bytes with a checksum that is right. */
  private static byte[] sealed(byte[] bytes) {
    var digest = Sha256.digest();
    digest.update(bytes, 0, HEAD_BYTES);
    digest.update(bytes, PACKED_AT, bytes.length - PACKED_AT);
    byte[] whole = bytes.clone();
    System.arraycopy(digest.digest(), 0, whole, HEAD_BYTES, Sha256.BYTES);
    return whole;
  }
}
