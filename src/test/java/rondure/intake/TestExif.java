package rondure.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rondure.base.FrameProblem;

/** Writes directories of tags byte by byte (TIFF 6.0, section 2), sound or damaged on purpose. */
final class TestExif {
  static final int EXIF = 0x8769;
  static final int GPS = 0x8825;
  static final int SUB_IFDS = 0x014A;

  private record Entry(int tag, int type, long count, byte[] value) {}

  private final List<Entry> entries = new ArrayList<>();
  private final List<Integer> pointerTags = new ArrayList<>();
  private final List<TestExif> below = new ArrayList<>();
  private final ByteOrder order;
  private long next;

  TestExif(ByteOrder order) {
    this.order = order;
  }

  static TestExif little() {
    return new TestExif(ByteOrder.LITTLE_ENDIAN);
  }

  TestExif ascii(int tag, String text) {
    byte[] bytes = (text + "\0").getBytes(StandardCharsets.UTF_8);
    return raw(tag, 2, bytes.length, bytes);
  }

  TestExif shorts(int tag, int... values) {
    ByteBuffer bytes = ByteBuffer.allocate(2 * values.length).order(order);
    for (int value : values) {
      bytes.putShort((short) value);
    }
    return raw(tag, 3, values.length, bytes.array());
  }

  TestExif whole(int tag, long value) {
    return raw(tag, 4, 1, ByteBuffer.allocate(4).order(order).putInt((int) value).array());
  }

  TestExif rational(int tag, long above, long below) {
    return raw(tag, 5, 1, fraction(above, below));
  }

  TestExif signedRational(int tag, long above, long below) {
    return raw(tag, 10, 1, fraction(above, below));
  }

  private byte[] fraction(long above, long below) {
    return ByteBuffer.allocate(8).order(order).putInt((int) above).putInt((int) below).array();
  }

  /** A tag with any type and any claimed count; longer values move behind the directory. */
  TestExif raw(int tag, int type, long claimedCount, byte[] value) {
    entries.add(new Entry(tag, type, claimedCount, value));
    return this;
  }

  TestExif directory(int tag, TestExif directory) {
    pointerTags.add(tag);
    below.add(directory);
    return this;
  }

  /** Where the directory says that another one follows. */
  TestExif next(long offset) {
    next = offset;
    return this;
  }

  /** A whole TIFF without pixels. */
  byte[] tiff() {
    ByteBuffer out = ByteBuffer.allocate(1 << 16).order(order);
    out.put((order == ByteOrder.LITTLE_ENDIAN ? "II" : "MM").getBytes(StandardCharsets.US_ASCII));
    out.putShort((short) 42).putInt(8);
    write(out, 8);
    byte[] bytes = new byte[out.position()];
    out.get(0, bytes);
    return bytes;
  }

  /** Writes the directory at {@code at} and all that belongs to it; leaves the position behind. */
  private void write(ByteBuffer out, int at) {
    int count = entries.size() + below.size();
    int free = at + 2 + 12 * count + 4;
    out.putShort(at, (short) count);
    int entryAt = at + 2;
    for (Entry entry : entries) {
      out.putShort(entryAt, (short) entry.tag()).putShort(entryAt + 2, (short) entry.type());
      out.putInt(entryAt + 4, (int) entry.count());
      if (entry.value().length <= 4) {
        out.put(entryAt + 8, entry.value());
      } else {
        out.putInt(entryAt + 8, free).put(free, entry.value());
        free += entry.value().length + entry.value().length % 2;
      }
      entryAt += 12;
    }
    for (int i = 0; i < below.size(); i++) {
      out.putShort(entryAt, (short) (int) pointerTags.get(i)).putShort(entryAt + 2, (short) 4);
      out.putInt(entryAt + 4, 1).putInt(entryAt + 8, free);
      out.position(free);
      below.get(i).write(out, free);
      free = out.position() + out.position() % 2;
      entryAt += 12;
    }
    out.putInt(entryAt, (int) next);
    out.position(Math.max(out.position(), free));
  }

  /** A JPEG of this size by its header, with this EXIF; no pixels behind it. */
  byte[] jpeg(int width, int height) {
    return jpeg(width, height, List.of());
  }

  byte[] jpeg(int width, int height, List<byte[]> moreApp1) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xD8});
    ByteArrayOutputStream exif = new ByteArrayOutputStream();
    exif.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    exif.writeBytes(tiff());
    segment(out, 0xE1, exif.toByteArray());
    moreApp1.forEach(bytes -> segment(out, 0xE1, bytes));
    ByteBuffer frame = ByteBuffer.allocate(9);
    frame.put((byte) 8).putShort((short) height).putShort((short) width).put((byte) 1);
    frame.put((byte) 1).put((byte) 0x11).put((byte) 0);
    segment(out, 0xC0, frame.array());
    segment(out, 0xDA, new byte[] {1, 1, 0, 0, 63, 0});
    out.writeBytes(new byte[] {0, 0, (byte) 0xFF, (byte) 0xD9});
    return out.toByteArray();
  }

  private static void segment(ByteArrayOutputStream out, int marker, byte[] content) {
    int length = content.length + 2;
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) marker, (byte) (length >> 8), (byte) length});
    out.writeBytes(content);
  }

  static ShotFacts facts(byte[] file) throws FrameProblem {
    return facts(file, ".bin");
  }

  static ShotFacts facts(byte[] file, String ending) throws FrameProblem {
    try {
      Path path = Files.createTempFile("facts", ending);
      try {
        Files.write(path, file);
        return FactsReader.read(path);
      } finally {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
