package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rondure.base.FrameProblem;

/** One image file directory of a TIFF or of a RAW built like one (TIFF 6.0, section 2). */
final class TiffDirectory {
  static final int SUB_IFDS = 330;

  private static final int MOST_DIRECTORIES = 64;
  private static final int MOST_VALUES = 1 << 22;
  private static final int[] BYTES_OF_TYPE = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4};

  private record Entry(int type, long count, long offset) {}

  private final FileBytes file;
  private final ByteOrder order;
  private final Map<Integer, Entry> entries = new HashMap<>();

  private TiffDirectory(FileBytes file, ByteOrder order) {
    this.file = file;
    this.order = order;
  }

  /** The directories of the main chain, first one first; at least one. */
  static List<TiffDirectory> chain(FileBytes file) throws IOException, FrameProblem {
    ByteBuffer header = file.read(0, 8);
    ByteOrder order = header.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
    header.order(order);
    if (header.getShort(2) == 43) {
      throw new FrameProblem("this is a BigTIFF, which is not read; export an ordinary TIFF");
    }
    List<TiffDirectory> chain = new ArrayList<>();
    long offset = header.getInt(4) & 0xFFFFFFFFL;
    while (offset != 0 && chain.size() < MOST_DIRECTORIES) {
      TiffDirectory directory = new TiffDirectory(file, order);
      offset = directory.fill(offset);
      chain.add(directory);
    }
    if (chain.isEmpty()) {
      throw new FrameProblem("the TIFF holds no picture; export it again");
    }
    return chain;
  }

  /** Every directory of the file: the chain and its sub-directories. */
  static List<TiffDirectory> all(FileBytes file) throws IOException, FrameProblem {
    List<TiffDirectory> all = new ArrayList<>();
    for (TiffDirectory directory : chain(file)) {
      all.add(directory);
      for (long offset : directory.numbers(SUB_IFDS)) {
        if (all.size() < MOST_DIRECTORIES) {
          TiffDirectory below = new TiffDirectory(file, directory.order);
          below.fill(offset);
          all.add(below);
        }
      }
    }
    return all;
  }

  /** Reads the entries at {@code offset}; answers the offset of the next directory, 0 for none. */
  private long fill(long offset) throws IOException, FrameProblem {
    int count = file.read(offset, 2).order(order).getShort() & 0xFFFF;
    ByteBuffer table = file.read(offset + 2, 12 * count).order(order);
    for (int i = 0; i < count; i++) {
      int at = 12 * i;
      int type = table.getShort(at + 2) & 0xFFFF;
      long values = table.getInt(at + 4) & 0xFFFFFFFFL;
      long bytes = values * size(type);
      long place = bytes <= 4 ? offset + 2 + at + 8 : table.getInt(at + 8) & 0xFFFFFFFFL;
      entries.putIfAbsent(table.getShort(at) & 0xFFFF, new Entry(type, values, place));
    }
    long next = offset + 2 + 12L * count;
    return next + 4 <= file.length() ? file.read(next, 4).order(order).getInt() & 0xFFFFFFFFL : 0;
  }

  private static int size(int type) {
    return type < BYTES_OF_TYPE.length ? BYTES_OF_TYPE[type] : 0;
  }

  ReadingLimits limits() {
    return file.limits();
  }

  ByteOrder order() {
    return order;
  }

  boolean has(int tag) {
    return entries.containsKey(tag);
  }

  /** The first value of a whole-number tag, or {@code otherwise} when it is missing. */
  long number(int tag, long otherwise) throws IOException, FrameProblem {
    long[] numbers = numbers(tag);
    return numbers.length > 0 ? numbers[0] : otherwise;
  }

  /** The values of a whole-number tag (BYTE, SHORT, LONG, IFD); none when it is missing. */
  long[] numbers(int tag) throws IOException, FrameProblem {
    Entry entry = entries.get(tag);
    if (entry == null) {
      return new long[0];
    }
    ByteBuffer bytes = ByteBuffer.wrap(bytes(tag)).order(order);
    int size = size(entry.type());
    long[] numbers = new long[size == 0 ? 0 : bytes.capacity() / size];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] =
          switch (size) {
            case 1 -> bytes.get(i) & 0xFF;
            case 2 -> bytes.getShort(2 * i) & 0xFFFF;
            case 4 -> bytes.getInt(4 * i) & 0xFFFFFFFFL;
            default -> bytes.getInt(8 * i) & 0xFFFFFFFFL;
          };
    }
    return numbers;
  }

  /** The raw bytes of a tag's values; none when it is missing. */
  byte[] bytes(int tag) throws IOException, FrameProblem {
    Entry entry = entries.get(tag);
    if (entry == null) {
      return new byte[0];
    }
    if (entry.count() > MOST_VALUES) {
      throw new FrameProblem(
          "TIFF tag " + tag + " claims " + entry.count() + " values; the file is damaged");
    }
    return file.read(entry.offset(), (int) entry.count() * size(entry.type())).array();
  }
}
