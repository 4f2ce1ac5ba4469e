package rondure.sim;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * One image file directory of a little-endian TIFF: tags in order, with directories below it (TIFF
 * Revision 6.0, section 2). Not frozen: filled, then written.
 */
final class Ifd {
  private static final int BYTE = 1;
  private static final int ASCII = 2;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int RATIONAL = 5;
  private static final int UNDEFINED = 7;
  private static final int SIGNED_RATIONAL = 10;
  private static final int ENTRY_BYTES = 12;

  private record Entry(int type, int count, ByteBuffer data) {}

  private final Map<Integer, Entry> entries = new TreeMap<>();
  private final Map<Integer, Ifd> below = new TreeMap<>();

  Ifd ascii(int tag, String text) {
    byte[] bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    return put(tag, ASCII, bytes.length, buffer(bytes.length).put(bytes));
  }

  Ifd bytes(int tag, int... values) {
    ByteBuffer data = buffer(values.length);
    for (int value : values) {
      data.put((byte) value);
    }
    return put(tag, BYTE, values.length, data);
  }

  Ifd undefined(int tag, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
    return put(tag, UNDEFINED, bytes.length, buffer(bytes.length).put(bytes));
  }

  Ifd shorts(int tag, int... values) {
    ByteBuffer data = buffer(2 * values.length);
    for (int value : values) {
      data.putShort((short) value);
    }
    return put(tag, SHORT, values.length, data);
  }

  Ifd longs(int tag, int... values) {
    ByteBuffer data = buffer(4 * values.length);
    for (int value : values) {
      data.putInt(value);
    }
    return put(tag, LONG, values.length, data);
  }

  Ifd rationals(int tag, double... values) {
    return put(tag, RATIONAL, values.length, fractions(values));
  }

  Ifd signedRationals(int tag, double... values) {
    return put(tag, SIGNED_RATIONAL, values.length, fractions(values));
  }

  /** A directory below this one, under a pointer tag. */
  Ifd directory(int tag, Ifd directory) {
    below.put(tag, directory);
    return longs(tag, 0);
  }

  /** The directory with everything it points to, for writing at a place of the file. */
  byte[] toBytes(int offset) {
    int free = offset + 2 + ENTRY_BYTES * entries.size() + 4;
    ByteArrayOutputStream outside = new ByteArrayOutputStream();
    ByteBuffer inside = buffer(free - offset);
    inside.putShort((short) entries.size());
    for (Map.Entry<Integer, Entry> tagged : entries.entrySet()) {
      Entry entry = tagged.getValue();
      byte[] data = entry.data().array();
      if (below.containsKey(tagged.getKey())) {
        int place = free + outside.size();
        outside.writeBytes(below.get(tagged.getKey()).toBytes(place));
        data = buffer(4).putInt(place).array();
      }
      inside.putShort(tagged.getKey().shortValue());
      inside.putShort((short) entry.type());
      inside.putInt(entry.count());
      if (data.length <= 4) {
        inside.put(data);
        inside.position(inside.position() + 4 - data.length);
      } else {
        inside.putInt(free + outside.size());
        outside.writeBytes(data);
      }
      if (outside.size() % 2 == 1) {
        outside.write(0);
      }
    }
    inside.putInt(0);
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    whole.writeBytes(inside.array());
    whole.writeBytes(outside.toByteArray());
    return whole.toByteArray();
  }

  private Ifd put(int tag, int type, int count, ByteBuffer data) {
    entries.put(tag, new Entry(type, count, data));
    return this;
  }

  private static ByteBuffer fractions(double[] values) {
    ByteBuffer data = buffer(8 * values.length);
    for (double value : values) {
      long inverse = value > 0 && value < 1 ? Math.round(1 / value) : 0;
      if (value == Math.rint(value) && Math.abs(value) < Integer.MAX_VALUE) {
        data.putInt((int) value).putInt(1);
      } else if (inverse > 0 && inverse * value == 1) {
        data.putInt(1).putInt((int) inverse);
      } else {
        int denominator = Math.abs(value) < 2000 ? 1_000_000 : 10_000;
        data.putInt((int) Math.round(value * denominator)).putInt(denominator);
      }
    }
    return data;
  }

  private static ByteBuffer buffer(int size) {
    return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
  }
}
