package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Files built after the published descriptions of CR3 (L. Clévy 2018) and CRW (CIFF 1.0 r4). */
class CanonRawTest {

  static byte[] cr3() {
    TestExif main =
        TestExif.little().ascii(0x010F, "Lumen").ascii(0x0110, "Lumen X3").shorts(0x0112, 8);
    TestExif exif =
        TestExif.little()
            .rational(0x829A, 13, 1)
            .rational(0x829D, 18, 10)
            .ascii(0x9003, "2031:01:17 23:58:04")
            .rational(0x920A, 20, 1)
            .whole(0xA002, 6000)
            .whole(0xA003, 4000)
            .rational(0xA20E, 6_000_000, 906)
            .shorts(0xA210, 2);
    byte[] position = TestExif.little().ascii(0x001D, "2031:01:17").tiff();
    byte[] uuid = new byte[16];
    ByteBuffer.wrap(uuid).putLong(0x85c0b687820f11e0L).putLong(0x8111f4ce462b6a48L);
    byte[] inside =
        join(uuid, box("CNCV", new byte[30]), box("CMT1", main.tiff()), box("CMT2", exif.tiff()));
    byte[] metadata = box("uuid", join(inside, box("CMT4", position)));
    byte[] start = box("ftyp", "crx \0\0\0\1crx isom".getBytes(StandardCharsets.ISO_8859_1));
    return join(start, box("moov", metadata, box("trak", new byte[40])), box("mdat", new byte[64]));
  }

  private static byte[] box(String type, byte[]... content) {
    byte[] inside = join(content);
    return join(
        ByteBuffer.allocate(4).putInt(inside.length + 8).array(),
        type.getBytes(StandardCharsets.US_ASCII),
        inside);
  }

  private static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Arrays.stream(parts).forEach(out::writeBytes);
    return out.toByteArray();
  }

  /** 8 s at f/4, ISO 200, 7 mm: 8 s is an APEX time of -96/32, f/4 an aperture value of 128/32. */
  static byte[] crw() {
    ByteBuffer shot = words(new int[26]);
    shot.putShort(4, (short) 192).putShort(42, (short) 128).putShort(44, (short) -96);
    ByteBuffer settings = words(new int[35]);
    settings.putShort(50, (short) 32);
    ByteBuffer image = little(28).putInt(2048).putInt(1536).putFloat(1).putInt(90);
    long second = LocalDateTime.of(2031, 1, 17, 23, 58, 4).toEpochSecond(java.time.ZoneOffset.UTC);
    byte[] exif =
        heap(
            new int[] {0x102A, 0x102D, 0x5029},
            new byte[][] {shot.array(), settings.array(), words(2, 224, 252, 189).array()});
    byte[] names = "Lumen\0Lumen Compact G\0".getBytes(StandardCharsets.US_ASCII);
    byte[] camera = heap(new int[] {0x080A}, new byte[][] {names});
    byte[] properties =
        heap(
            new int[] {0x1810, 0x180E, 0x2807, 0x300B},
            new byte[][] {image.array(), little(12).putInt((int) second).array(), camera, exif});
    byte[] root = heap(new int[] {0x300A}, new byte[][] {properties});
    ByteBuffer header = little(26).put("II".getBytes(StandardCharsets.US_ASCII)).putInt(26);
    header.put("HEAPCCDR".getBytes(StandardCharsets.US_ASCII)).putInt(0x00010002);
    return join(header.array(), root);
  }

  private static ByteBuffer little(int bytes) {
    return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static ByteBuffer words(int... values) {
    ByteBuffer bytes = little(2 * values.length);
    for (int i = 0; i < values.length; i++) {
      bytes.putShort(2 * i, (short) values[i]);
    }
    return bytes;
  }

  /** Values, then their directory, then where it is; tags with bit 14 hold 8 bytes themselves. */
  private static byte[] heap(int[] tags, byte[][] values) {
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    ByteBuffer directory = little(2 + 10 * tags.length).putShort((short) tags.length);
    for (int i = 0; i < tags.length; i++) {
      directory.putShort((short) tags[i]);
      if ((tags[i] & 0x4000) != 0) {
        directory.put(values[i]);
      } else {
        directory.putInt(values[i].length).putInt(data.size());
        data.writeBytes(values[i]);
      }
    }
    int offset = data.size();
    return join(data.toByteArray(), directory.array(), little(4).putInt(offset).array());
  }

  @Test
  void aCr3GivesItsExif() throws FrameProblem {
    ShotFacts facts = TestExif.facts(cr3(), ".cr3");
    assertEquals(ImageFormat.RAW, facts.format());
    assertEquals(6000, facts.widthPx());
    assertEquals(Orientation.ROTATED_270_CW, facts.orientation());
    assertEquals(Optional.of("Lumen X3"), facts.camera());
    assertEquals(13, facts.exposureSeconds().orElseThrow().value());
    assertEquals(1.8, facts.fNumber().orElseThrow().value(), 1e-12);
    assertEquals(
        LocalDateTime.of(2031, 1, 17, 23, 58, 4), facts.captureTime().orElseThrow().local());
    assertEquals(3.8354, facts.pixelPitchMicrons().orElseThrow().value(), 1e-4);
  }

  @Test
  void aCrwGivesItsFacts() throws FrameProblem {
    ShotFacts facts = TestExif.facts(crw(), ".crw");
    assertEquals(ImageFormat.RAW, facts.format());
    assertEquals(2048, facts.widthPx());
    assertEquals(1536, facts.heightPx());
    assertEquals(Orientation.ROTATED_90_CW, facts.orientation());
    assertEquals(Optional.of("Lumen Compact G"), facts.camera());
    assertEquals(8, facts.exposureSeconds().orElseThrow().value(), 1e-9);
    assertEquals(4, facts.fNumber().orElseThrow().value(), 1e-9);
    assertEquals(200, facts.iso().orElseThrow().value(), 1e-9);
    assertEquals(7, facts.focalLengthMm().orElseThrow().value(), 1e-9);
    assertEquals(
        LocalDateTime.of(2031, 1, 17, 23, 58, 4), facts.captureTime().orElseThrow().local());
  }

  @Test
  void aCutCrwStillNamesItself() throws FrameProblem {
    byte[] whole = crw();
    ShotFacts facts = TestExif.facts(Arrays.copyOf(whole, 40), ".crw");
    assertEquals(ShotFacts.unknown(ImageFormat.RAW), facts);
  }
}
