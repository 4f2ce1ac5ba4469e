package rondure.intake;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.Deflater;
import javax.imageio.ImageIO;

/** Writes small TIFFs of every layout, slowly and plainly (TIFF 6.0), for the decoder to read. */
final class TestTiff {
  int width = 7;
  int height = 5;
  int samples = 1;
  int bits = 16;
  int format = 1;
  int photometric = 1;
  int compression = 1;
  int predictor = 1;
  int rowsPerStrip = 2;
  int tileSide;
  boolean planar;
  ByteOrder order = ByteOrder.LITTLE_ENDIAN;
  byte[] profile = {};
  final java.util.Map<Integer, byte[]> byteTags = new java.util.TreeMap<>();
  final List<int[]> extraTags = new ArrayList<>();

  /** Bits of sample {@code sample} at column x and row y. */
  interface Word {
    int at(int x, int y, int sample);
  }

  byte[] write(Word word) {
    List<byte[]> chunks = new ArrayList<>();
    for (int plane = 0; plane < (planar ? samples : 1); plane++) {
      int chunkHeight = tileSide > 0 ? tileSide : rowsPerStrip;
      int chunkWidth = tileSide > 0 ? tileSide : width;
      for (int top = 0; top < height; top += chunkHeight) {
        for (int left = 0; left < width; left += chunkWidth) {
          int rows = tileSide > 0 ? tileSide : Math.min(rowsPerStrip, height - top);
          chunks.add(packed(chunk(word, plane, new int[] {left, top, chunkWidth, rows})));
        }
      }
    }
    return file(chunks);
  }

  private byte[] chunk(Word word, int plane, int[] box) {
    int inChunk = planar ? 1 : samples;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int y = box[1]; y < box[1] + box[3]; y++) {
      int[] row = new int[box[2] * inChunk];
      for (int i = 0; i < row.length; i++) {
        int x = box[0] + i / inChunk;
        int sample = planar ? plane : i % inChunk;
        row[i] = x < width && y < height ? word.at(x, y, sample) : 0;
      }
      out.writeBytes(rowBytes(row, inChunk));
    }
    return out.toByteArray();
  }

  private byte[] rowBytes(int[] row, int step) {
    int[] words = row.clone();
    if (predictor == 2) {
      for (int i = words.length - 1; i >= step; i--) {
        words[i] -= words[i - step];
      }
    }
    ByteBuffer bytes = ByteBuffer.allocate(words.length * bits / 8);
    bytes.order(predictor == 3 ? ByteOrder.BIG_ENDIAN : order);
    for (int value : words) {
      switch (bits) {
        case 8 -> bytes.put((byte) value);
        case 16 -> bytes.putShort((short) value);
        default -> bytes.putInt(value);
      }
    }
    return predictor == 3 ? splitAndDifference(bytes.array(), step) : bytes.array();
  }

  /** Adobe Photoshop TIFF Technical Note 3: bytes by significance, then differences. */
  private static byte[] splitAndDifference(byte[] bigEndian, int step) {
    int count = bigEndian.length / 4;
    byte[] split = new byte[bigEndian.length];
    for (int i = 0; i < count; i++) {
      for (int part = 0; part < 4; part++) {
        split[part * count + i] = bigEndian[4 * i + part];
      }
    }
    for (int i = split.length - 1; i >= step; i--) {
      split[i] -= split[i - step];
    }
    return split;
  }

  private byte[] packed(byte[] bytes) {
    return switch (compression) {
      case 5 -> lzwOfLiterals(bytes);
      case 8, 32_946 -> deflated(bytes);
      case 32_773 -> packBits(bytes);
      case 34_892 -> jpegOfTile(bytes);
      default -> bytes;
    };
  }

  /** A tile of three 8-bit samples as a JPEG. */
  private byte[] jpegOfTile(byte[] rgb) {
    BufferedImage tile = new BufferedImage(tileSide, tileSide, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < rgb.length / 3; i++) {
      int value = (rgb[3 * i] & 0xFF) << 16 | (rgb[3 * i + 1] & 0xFF) << 8 | rgb[3 * i + 2] & 0xFF;
      tile.setRGB(i % tileSide, i / tileSide, value);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(tile, "jpg", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  static byte[] deflated(byte[] bytes) {
    Deflater deflater = new Deflater();
    deflater.setInput(bytes);
    deflater.finish();
    byte[] out = new byte[bytes.length * 2 + 100];
    int count = deflater.deflate(out);
    deflater.end();
    return java.util.Arrays.copyOf(out, count);
  }

  /** A valid LZW stream that clears its table before codes grow beyond 9 bits. */
  private static byte[] lzwOfLiterals(byte[] bytes) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    long bitStore = 0;
    int stored = 0;
    for (int i = 0; i <= bytes.length; i++) {
      int[] codes =
          i == bytes.length
              ? new int[] {257}
              : i % 200 == 0 ? new int[] {256, bytes[i] & 0xFF} : new int[] {bytes[i] & 0xFF};
      for (int code : codes) {
        bitStore = bitStore << 9 | code;
        stored += 9;
        while (stored >= 8) {
          stored -= 8;
          out.write((int) (bitStore >> stored) & 0xFF);
        }
      }
    }
    out.write((int) (bitStore << (8 - stored)) & 0xFF);
    return out.toByteArray();
  }

  /** Runs of equal bytes and single literals. */
  private static byte[] packBits(byte[] bytes) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int i = 0; i < bytes.length; ) {
      int run = 1;
      while (i + run < bytes.length && run < 128 && bytes[i + run] == bytes[i]) {
        run++;
      }
      out.write(run == 1 ? 0 : 257 - run);
      out.write(bytes[i]);
      i += run;
    }
    return out.toByteArray();
  }

  private byte[] file(List<byte[]> chunks) {
    List<int[]> tags = new ArrayList<>(extraTags);
    ByteArrayOutputStream tail = new ByteArrayOutputStream();
    int tailAt = 8 + 2 + 12 * (20 + extraTags.size() + byteTags.size()) + 4;
    tags.add(new int[] {256, 4, 1, width});
    tags.add(new int[] {257, 4, 1, height});
    tags.add(new int[] {258, 3, 1, shortValue(bits)});
    tags.add(new int[] {259, 3, 1, shortValue(compression)});
    tags.add(new int[] {262, 3, 1, shortValue(photometric)});
    tags.add(new int[] {277, 3, 1, shortValue(samples)});
    tags.add(new int[] {284, 3, 1, shortValue(planar ? 2 : 1)});
    tags.add(new int[] {317, 3, 1, shortValue(predictor)});
    tags.add(new int[] {339, 3, 1, shortValue(format)});
    if (tileSide > 0) {
      tags.add(new int[] {322, 4, 1, tileSide});
      tags.add(new int[] {323, 4, 1, tileSide});
    } else {
      tags.add(new int[] {278, 4, 1, rowsPerStrip});
    }
    if (profile.length > 0) {
      tags.add(new int[] {34_675, 7, profile.length, tailAt});
      tail.writeBytes(profile);
    }
    byteTags.forEach(
        (tag, bytes) -> {
          tags.add(new int[] {tag, 1, bytes.length, tailAt + tail.size()});
          tail.writeBytes(bytes);
        });
    int tables = tailAt + tail.size();
    int dataAt = tables + 8 * chunks.size();
    ByteBuffer offsets = ByteBuffer.allocate(4 * chunks.size()).order(order);
    ByteBuffer lengths = ByteBuffer.allocate(4 * chunks.size()).order(order);
    for (byte[] chunk : chunks) {
      offsets.putInt(dataAt);
      lengths.putInt(chunk.length);
      dataAt += chunk.length;
    }
    tail.writeBytes(offsets.array());
    tail.writeBytes(lengths.array());
    boolean one = chunks.size() == 1;
    int first = tables + 8;
    int firstTag = tileSide > 0 ? 324 : 273;
    int lengthTag = tileSide > 0 ? 325 : 279;
    tags.add(new int[] {firstTag, 4, chunks.size(), one ? first : tables});
    tags.add(
        new int[] {
          lengthTag, 4, chunks.size(), one ? chunks.get(0).length : tables + 4 * chunks.size()
        });
    return joined(tags, tailAt, tail.toByteArray(), chunks);
  }

  private int shortValue(int value) {
    return order == ByteOrder.LITTLE_ENDIAN ? value : value << 16;
  }

  private byte[] joined(List<int[]> tags, int tailAt, byte[] tail, List<byte[]> chunks) {
    tags.sort((a, b) -> Integer.compare(a[0], b[0]));
    ByteBuffer head = ByteBuffer.allocate(tailAt).order(order);
    head.put(order == ByteOrder.LITTLE_ENDIAN ? new byte[] {'I', 'I'} : new byte[] {'M', 'M'});
    head.putShort((short) 42).putInt(8).putShort((short) tags.size());
    for (int[] tag : tags) {
      head.putShort((short) tag[0]).putShort((short) tag[1]).putInt(tag[2]).putInt(tag[3]);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(head.array());
    out.writeBytes(tail);
    chunks.forEach(out::writeBytes);
    return out.toByteArray();
  }

  /** A Bayer DNG of one uncompressed strip; the cell is given as colour letters, row by row. */
  static byte[] dng(int width, int height, String cell, int[] black, Word word) {
    TestTiff tiff = new TestTiff();
    tiff.width = width;
    tiff.height = height;
    tiff.rowsPerStrip = height;
    tiff.photometric = 32_803;
    int pattern = 0;
    for (int i = 0; i < 4; i++) {
      pattern |= "RGB".indexOf(cell.charAt(i)) << 8 * i;
    }
    tiff.extraTags.add(new int[] {254, 4, 1, 0});
    tiff.extraTags.add(new int[] {33_421, 3, 2, 2 | 2 << 16});
    tiff.extraTags.add(new int[] {33_422, 1, 4, pattern});
    tiff.extraTags.add(new int[] {50_706, 1, 4, 1 | 4 << 8});
    if (black.length == 1) {
      tiff.extraTags.add(new int[] {50_714, 3, 1, black[0]});
    } else {
      tiff.extraTags.add(new int[] {50_713, 3, 2, 1 | 2 << 16});
      tiff.extraTags.add(new int[] {50_714, 3, 2, black[0] | black[1] << 16});
    }
    tiff.extraTags.add(new int[] {50_717, 3, 1, 16_383});
    return tiff.write(word);
  }
}
