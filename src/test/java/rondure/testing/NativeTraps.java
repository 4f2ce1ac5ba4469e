package rondure.testing;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * RAW files of a few kilobytes on which LibRaw 0.20 itself goes wrong, found by mutation and made
 * here from nothing (tags: TIFF 6.0 and Digital Negative Specification 1.7.1; lossless JPEG: ITU-T
 * T.81, annexes B and H).
 */
public final class NativeTraps {
  private static final int SIDE = 128;
  private static final int MAKER = 271;
  private static final int MODEL = 272;
  private static final int SLICES = 50_752;
  private static final int HEAD_BYTES = 400;
  private static final int NAMES_AT = 300;
  private static final int SLICES_AT = 340;

  private NativeTraps() {}

  /** States slices of no columns, by which LibRaw divides: SIGFPE. To be named {@code *.cr2}. */
  public static byte[] crash() {
    List<int[]> tags = common(6);
    tags.add(new int[] {SLICES, 3, 3, SLICES_AT});
    byte[] file = file(tags, losslessJpeg(SIDE, SIDE));
    ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).putShort(SLICES_AT, (short) 1);
    return file;
  }

  /** A DNG of 128 × 128 px whose packed data claim 65,500 × 65,500: minutes of decoding. */
  public static byte[] hang() {
    List<int[]> tags = common(7);
    tags.add(new int[] {33_421, 3, 2, 2 | 2 << 16});
    tags.add(new int[] {33_422, 1, 4, 1 << 8 | 1 << 16 | 2 << 24});
    tags.add(new int[] {50_706, 1, 4, 1 | 4 << 8});
    return file(tags, losslessJpeg(65_500, 65_500));
  }

  private static List<int[]> common(int compression) {
    List<int[]> tags = new ArrayList<>();
    tags.add(new int[] {254, 4, 1, 0});
    tags.add(new int[] {256, 4, 1, SIDE});
    tags.add(new int[] {257, 4, 1, SIDE});
    tags.add(new int[] {258, 3, 1, 12});
    tags.add(new int[] {259, 3, 1, compression});
    tags.add(new int[] {262, 3, 1, 32_803});
    tags.add(new int[] {MAKER, 2, 9, NAMES_AT});
    tags.add(new int[] {MODEL, 2, 11, NAMES_AT + 10});
    tags.add(new int[] {273, 4, 1, HEAD_BYTES});
    tags.add(new int[] {277, 3, 1, 1});
    tags.add(new int[] {278, 4, 1, SIDE});
    return tags;
  }

  private static byte[] file(List<int[]> tags, byte[] data) {
    tags.add(new int[] {279, 4, 1, data.length});
    tags.sort((a, b) -> Integer.compare(a[0], b[0]));
    ByteBuffer file = ByteBuffer.allocate(HEAD_BYTES + data.length).order(ByteOrder.LITTLE_ENDIAN);
    file.put(ascii("II*\0")).putInt(8).putShort((short) tags.size());
    for (int[] tag : tags) {
      file.putShort((short) tag[0]).putShort((short) tag[1]).putInt(tag[2]).putInt(tag[3]);
    }
    file.position(NAMES_AT).put(ascii("Larkmoor\0\0Vesper One\0"));
    return file.position(HEAD_BYTES).put(data).array();
  }

  /** Header of two components, one Huffman table of a usual shape, and a few random bits. */
  private static byte[] losslessJpeg(int width, int height) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xC4, 0, 2 + 17 + 15});
    out.writeBytes(new byte[] {0, 0, 1, 5, 1, 1, 1, 1, 1, 1, 3, 0, 0, 0, 0, 0, 0});
    for (int category = 0; category < 15; category++) {
      out.write(category);
    }
    int half = width / 2;
    byte[] size = {12, (byte) (height >> 8), (byte) height, (byte) (half >> 8), (byte) half, 2};
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xC3, 0, 14});
    out.writeBytes(size);
    out.writeBytes(new byte[] {0, 0x11, 0, 1, 0x11, 0});
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xDA, 0, 10, 2, 0, 0, 1, 0, 1, 0, 0});
    byte[] bits = new byte[4096];
    new java.util.Random(2242).nextBytes(bits);
    for (byte some : bits) {
      out.write(some & 0x7F);
    }
    return out.toByteArray();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
