package rondure.testing;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Damage that knows how files are built: entries of any TIFF directory, chunks of a PNG, segments
 * of a JPEG, cards of a FITS header, elements of XML.
 */
final class Structures {
  private static final int TIFF_ENTRY_BYTES = 12;
  private static final int CARD = 80;
  private static final int MOST_PARTS = 5_000;
  private static final List<String> FITS_VALUES =
      List.of("0", "-1", "1", "2", "999", "1E308", "-1E308", "NaN", "'T'", "4294967296", "-32", "");

  /** Part of a file, from its first byte to behind its last. */
  private record Part(int start, int end) {}

  private final Random random;

  Structures(Random random) {
    this.random = random;
  }

  /** True when the file's structure is known here. */
  static boolean knows(byte[] file) {
    return isTiff(file) || !parts(file).isEmpty();
  }

  /** One part changed: moved, doubled, lost, or with another number in it. */
  byte[] changed(byte[] file, long extreme) {
    if (isTiff(file)) {
      return entry(file, extreme);
    }
    List<Part> parts = parts(file);
    if (parts.isEmpty()) {
      return file;
    }
    Part part = parts.get(random.nextInt(parts.size()));
    return switch (random.nextInt(4)) {
      case 0 -> spliced(file, part, new byte[0]);
      case 1 -> spliced(file, part, doubled(file, part));
      case 2 -> spliced(file, part, slice(file, parts.get(random.nextInt(parts.size()))));
      default -> numbered(file, part, extreme);
    };
  }

  private static boolean isTiff(byte[] file) {
    return file.length > 16
        && (file[0] == 'I' && file[1] == 'I' || file[0] == 'M' && file[1] == 'M');
  }

  /** Tag, type, count or value of one entry of any directory (TIFF 6.0, section 2). */
  private byte[] entry(byte[] file, long extreme) {
    ByteOrder order = file[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
    ByteBuffer bytes = ByteBuffer.wrap(file).order(order);
    List<Integer> entries = entries(bytes);
    if (entries.isEmpty()) {
      bytes.putInt(4, (int) extreme);
      return file;
    }
    int at = entries.get(random.nextInt(entries.size()));
    switch (random.nextInt(6)) {
      case 0 -> bytes.putShort(at + 2, (short) random.nextInt(20));
      case 1 -> bytes.putInt(at + 4, (int) extreme);
      case 2 -> bytes.putShort(at + 8, (short) extreme);
      case 3 -> bytes.putInt(at + 8, (int) extreme);
      case 4 -> bytes.putInt(at + 8, bytes.getInt(entries.get(random.nextInt(entries.size())) + 8));
      default -> bytes.putShort(at, bytes.getShort(entries.get(random.nextInt(entries.size()))));
    }
    return file;
  }

  /** Where the entries of the chain of directories and of those below it begin. */
  private static List<Integer> entries(ByteBuffer bytes) {
    List<Integer> entries = new ArrayList<>();
    List<Integer> open = new ArrayList<>(List.of(bytes.getInt(4)));
    for (int i = 0; i < open.size() && i < 20; i++) {
      int directory = open.get(i);
      if (directory < 8 || directory > bytes.capacity() - 2 - TIFF_ENTRY_BYTES) {
        continue;
      }
      int count = bytes.getShort(directory) & 0xFFFF;
      int at = directory + 2;
      for (int j = 0; j < count && at <= bytes.capacity() - TIFF_ENTRY_BYTES - 4; j++) {
        entries.add(at);
        int tag = bytes.getShort(at) & 0xFFFF;
        if (tag == 330 || tag == 0x8769 || tag == 0x8825) {
          open.add(bytes.getInt(at + 8));
        }
        at += TIFF_ENTRY_BYTES;
      }
      if (at <= bytes.capacity() - 4) {
        open.add(bytes.getInt(at));
      }
    }
    return entries;
  }

  private static List<Part> parts(byte[] file) {
    String start = new String(file, 0, Math.min(9, file.length), StandardCharsets.ISO_8859_1);
    List<Part> parts = new ArrayList<>();
    if (start.startsWith("\u0089PNG")) {
      chain(file, parts, 8, Integer.BYTES, 12);
    } else if (start.startsWith("\u00ff\u00d8")) {
      chain(file, parts, 2, Short.BYTES, 2);
    } else if (start.startsWith("SIMPLE")) {
      for (int at = 0; at + CARD <= Math.min(file.length, 2880); at += CARD) {
        parts.add(new Part(at, at + CARD));
      }
    } else if (start.startsWith("<")) {
      elements(file, parts);
    }
    return parts;
  }

  /** Pieces that tell their length: PNG chunks, JPEG segments before the pixels. */
  private static void chain(byte[] file, List<Part> parts, int first, int lengthBytes, int around) {
    ByteBuffer bytes = ByteBuffer.wrap(file);
    int at = first;
    while (parts.size() < MOST_PARTS && at >= first && at <= file.length - 8) {
      boolean png = lengthBytes == Integer.BYTES;
      int length = png ? bytes.getInt(at) : bytes.getShort(at + 2) & 0xFFFF;
      if (length < 0 || length > file.length - at - around || !png && file[at] != (byte) 0xFF) {
        return;
      }
      parts.add(new Part(at, at + around + length));
      at += around + length;
    }
  }

  private static void elements(byte[] file, List<Part> parts) {
    int open = -1;
    for (int i = 0; i < file.length && parts.size() < MOST_PARTS; i++) {
      if (file[i] == '<') {
        open = i;
      } else if (file[i] == '>' && open >= 0) {
        parts.add(new Part(open, i + 1));
        open = -1;
      }
    }
  }

  private static byte[] slice(byte[] file, Part part) {
    return java.util.Arrays.copyOfRange(file, part.start(), part.end());
  }

  /** Up to some hundred times, as attacks do. */
  private byte[] doubled(byte[] file, Part part) {
    byte[] once = slice(file, part);
    int times = random.nextInt(8) == 0 ? 300 : 2;
    ByteBuffer all = ByteBuffer.allocate(times * Math.min(once.length, 1 << 16));
    for (int i = 0; i < times; i++) {
      all.put(once, 0, Math.min(once.length, 1 << 16));
    }
    return all.array();
  }

  private byte[] numbered(byte[] file, Part part, long extreme) {
    byte[] own = slice(file, part);
    if (file[0] == 'S' && own.length == CARD) {
      String name = new String(own, 0, 8, StandardCharsets.ISO_8859_1);
      String value = FITS_VALUES.get(random.nextInt(FITS_VALUES.size()));
      String card = String.format("%-8s= %20s", name, value);
      own = String.format("%-80s", card).getBytes(StandardCharsets.ISO_8859_1);
    } else if (own.length >= 12) {
      ByteBuffer bytes = ByteBuffer.wrap(own);
      bytes.putInt(random.nextBoolean() ? 8 : random.nextInt(own.length - 4), (int) extreme);
    }
    return spliced(file, part, own);
  }

  private static byte[] spliced(byte[] file, Part part, byte[] instead) {
    int behind = file.length - part.end();
    ByteBuffer all = ByteBuffer.allocate(part.start() + instead.length + behind);
    all.put(file, 0, part.start()).put(instead).put(file, part.end(), behind);
    return all.array();
  }
}
