package rondure.cli;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/** Small files whose headers declare far more pixels than any camera has. */
final class HugeHeaders {
  static final int SIDE = 200_000;

  /** JPEG has 16 bits for a side (ITU-T T.81, B.2.2). */
  static final int JPEG_SIDE = 65_500;

  private HugeHeaders() {}

  /** One uncompressed 16-bit strip (TIFF 6.0, section 2). */
  static byte[] tiff() {
    int[][] tags = {
      {256, 4, SIDE},
      {257, 4, SIDE},
      {258, 3, 16},
      {259, 3, 1},
      {262, 3, 1},
      {273, 4, 200},
      {277, 3, 1},
      {278, 4, SIDE},
      {279, 4, 1000}
    };
    ByteBuffer out = ByteBuffer.allocate(1200).order(ByteOrder.LITTLE_ENDIAN);
    out.put(new byte[] {'I', 'I', 42, 0}).putInt(8).putShort((short) tags.length);
    for (int[] tag : tags) {
      out.putShort((short) tag[0]).putShort((short) tag[1]).putInt(1).putInt(tag[2]);
    }
    return out.array();
  }

  /** A header chunk and an end (PNG, third edition, section 11.2). */
  static byte[] png() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10});
    ByteBuffer header = ByteBuffer.allocate(13).putInt(SIDE).putInt(SIDE);
    header.put(new byte[] {16, 0, 0, 0, 0});
    out.writeBytes(chunk("IHDR", header.array()));
    out.writeBytes(chunk("IDAT", new byte[] {0x78, (byte) 0x9C, 3, 0, 0, 0, 0, 1}));
    out.writeBytes(chunk("IEND", new byte[0]));
    return out.toByteArray();
  }

  private static byte[] chunk(String name, byte[] content) {
    byte[] named = ByteBuffer.allocate(4 + content.length).put(ascii(name)).put(content).array();
    CRC32 crc = new CRC32();
    crc.update(named);
    ByteBuffer chunk = ByteBuffer.allocate(8 + named.length);
    return chunk.putInt(content.length).put(named).putInt((int) crc.getValue()).array();
  }

  /** One header block and one block of data (FITS standard 4.0, section 4). */
  static byte[] fits() {
    StringBuilder cards = new StringBuilder();
    String[] lines = {
      "SIMPLE  =                    T",
      "BITPIX  =                   16",
      "NAXIS   =                    2",
      "NAXIS1  =               200000",
      "NAXIS2  =               200000",
      "END"
    };
    for (String line : lines) {
      cards.append(String.format("%-80s", line));
    }
    return String.format("%-5760s", cards).getBytes(StandardCharsets.US_ASCII);
  }

  /** Start of image, frame header, end of image. */
  static byte[] jpeg() {
    ByteBuffer out = ByteBuffer.allocate(2 + 2 + 11 + 2);
    out.putShort((short) 0xFFD8).putShort((short) 0xFFC0).putShort((short) 11).put((byte) 8);
    out.putShort((short) JPEG_SIDE).putShort((short) JPEG_SIDE);
    out.put(new byte[] {1, 1, 0x11, 0}).putShort((short) 0xFFD9);
    return out.array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
