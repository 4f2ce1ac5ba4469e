package rondure.testing;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;

/**
 * Damages valid files, the same way for the same seed: changed bytes, extreme numbers where numbers
 * may stand, cut, lost, doubled and blanked blocks; parts of the file's own {@link Structures}; the
 * check sums of PNG chunks are put right again, so that the damage reaches the decoder.
 */
public final class Mutator {
  private static final int HEADER_BYTES = 1_000;
  private static final long[] EXTREMES = {
    0, 1, 2, 0x7F, 0xFF, 0x7FFF, 0x8000, 0xFFFF, 0x10000, 0x7FFFFFFFL, 0x80000000L, 0xFFFFFFFFL
  };

  private final Random random;
  private final Structures structures;

  public Mutator(long seed) {
    random = new Random(seed);
    structures = new Structures(random);
  }

  /** A damaged copy, of one to three changes. */
  public byte[] damaged(byte[] file) {
    byte[] copy = file.clone();
    int changes = 1 + random.nextInt(3);
    for (int i = 0; i < changes && copy.length > 16; i++) {
      copy = changed(copy);
    }
    return isPng(copy) && random.nextInt(4) > 0 ? withSums(copy) : copy;
  }

  private byte[] changed(byte[] file) {
    return switch (random.nextInt(9)) {
      case 0, 1 -> byteAt(file, random.nextInt(reach(file)));
      case 2, 3 -> numberAt(file, random.nextInt(reach(file) - 4));
      case 4, 5 ->
          Structures.knows(file)
              ? structures.changed(file, extreme(file))
              : numberAt(file, random.nextInt(reach(file) - 4));
      case 6 -> Arrays.copyOf(file, random.nextInt(file.length));
      case 7 -> blanked(file);
      default -> random.nextBoolean() ? without(file) : doubled(file);
    };
  }

  /** Headers are hit more often than pixels. */
  private int reach(byte[] file) {
    return random.nextInt(3) > 0 ? Math.min(HEADER_BYTES, file.length) : file.length;
  }

  private byte[] byteAt(byte[] file, int at) {
    file[at] = (byte) random.nextInt(256);
    return file;
  }

  private byte[] numberAt(byte[] file, int at) {
    ByteBuffer bytes = ByteBuffer.wrap(file).order(anyOrder());
    long value = extreme(file);
    if (random.nextBoolean()) {
      bytes.putInt(at, (int) value);
    } else {
      bytes.putShort(at, (short) value);
    }
    return file;
  }

  private long extreme(byte[] file) {
    int which = random.nextInt(EXTREMES.length + 2);
    return which < EXTREMES.length ? EXTREMES[which] : file.length + random.nextInt(3) - 1L;
  }

  private ByteOrder anyOrder() {
    return random.nextBoolean() ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
  }

  private byte[] blanked(byte[] file) {
    int from = random.nextInt(file.length);
    int to = Math.min(file.length, from + 1 + random.nextInt(1 + file.length / 8));
    Arrays.fill(file, from, to, (byte) (random.nextBoolean() ? 0 : 0xFF));
    return file;
  }

  private byte[] without(byte[] file) {
    int from = random.nextInt(reach(file));
    int to = Math.min(file.length, from + 1 + random.nextInt(256));
    byte[] shorter = new byte[file.length - (to - from)];
    System.arraycopy(file, 0, shorter, 0, from);
    System.arraycopy(file, to, shorter, from, file.length - to);
    return shorter;
  }

  private byte[] doubled(byte[] file) {
    int from = random.nextInt(reach(file));
    int to = Math.min(file.length, from + 1 + random.nextInt(256));
    byte[] longer = new byte[file.length + (to - from)];
    System.arraycopy(file, 0, longer, 0, to);
    System.arraycopy(file, from, longer, to, file.length - from);
    return longer;
  }

  private static boolean isPng(byte[] file) {
    return file.length > 16 && (file[0] & 0xFF) == 0x89 && file[1] == 'P' && file[2] == 'N';
  }

  /** Right check sums over type and content of every whole chunk (PNG, third edition, 5.3). */
  private static byte[] withSums(byte[] png) {
    ByteBuffer bytes = ByteBuffer.wrap(png);
    int at = 8;
    while (at >= 8 && at <= png.length - 12) {
      int length = bytes.getInt(at);
      if (length < 0 || length > png.length - 12 - at) {
        return png;
      }
      CRC32 sum = new CRC32();
      sum.update(png, at + 4, 4 + length);
      bytes.putInt(at + 8 + length, (int) sum.getValue());
      at += 12 + length;
    }
    return png;
  }
}
