package rondure.sim;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes TIFF: 16-bit linear grey or RGB (or 8-bit with the sRGB curve), Deflate with horizontal
 * predictor (TIFF Revision 6.0, section 14; Technical Note 2), little-endian. The Java library's
 * own writer differences 8-bit samples only.
 */
final class TiffFile {
  private static final int ROWS_PER_STRIP = 64;
  private static final int DEFLATE = 8;
  private static final int HEADER_BYTES = 8;

  /** Level 9 makes night frames 2 % smaller and takes four times as long. */
  private static final int DEFLATE_LEVEL = 6;

  private TiffFile() {}

  static void write(SimFrame frame, OutputStream out) throws IOException {
    CameraPlan camera = frame.plan().camera();
    boolean eight = frame.plan().files().eightBit();
    int[][] planes = codes(frame);
    List<byte[]> strips = new ArrayList<>();
    for (int top = 0; top < camera.heightPx(); top += ROWS_PER_STRIP) {
      int bottom = Math.min(camera.heightPx(), top + ROWS_PER_STRIP);
      strips.add(deflated(predicted(planes, camera.widthPx(), top, bottom, eight)));
    }
    Ifd main = new Ifd();
    int channels = planes.length;
    int[] bits = new int[channels];
    Arrays.fill(bits, eight ? 8 : 16);
    main.longs(254, 0).longs(256, camera.widthPx()).longs(257, camera.heightPx());
    main.shorts(258, bits).shorts(259, DEFLATE).shorts(262, channels == 1 ? 1 : 2);
    main.shorts(277, channels).longs(278, ROWS_PER_STRIP).shorts(284, 1).shorts(317, 2);
    Exif.describe(frame, main);
    write(main, strips, out);
  }

  /** Writes the header, the strips, and the directory that names them. */
  static void write(Ifd main, List<byte[]> strips, OutputStream out) throws IOException {
    int[] offsets = new int[strips.size()];
    int[] sizes = new int[strips.size()];
    int place = HEADER_BYTES;
    for (int i = 0; i < offsets.length; i++) {
      offsets[i] = place;
      sizes[i] = strips.get(i).length;
      place += sizes[i] + sizes[i] % 2;
    }
    main.longs(273, offsets).longs(279, sizes);
    ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    header.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(place);
    out.write(header.array());
    for (byte[] strip : strips) {
      out.write(strip);
      if (strip.length % 2 == 1) {
        out.write(0);
      }
    }
    out.write(main.toBytes(place));
  }

  /** Code values of every channel. */
  private static int[][] codes(SimFrame frame) {
    CameraPlan camera = frame.plan().camera();
    float[][] linear = Develop.linear(frame);
    int[][] codes = new int[linear.length][];
    int range = camera.whiteLevelCounts() - camera.blackLevelCounts();
    // A whole factor keeps the sensor's steps, which also compress well.
    double scale = (double) range * (65535 / range);
    for (int channel = 0; channel < linear.length; channel++) {
      float[] plane = linear[channel];
      codes[channel] = new int[plane.length];
      if (frame.plan().files().eightBit()) {
        byte[] bytes = Develop.eightBit(plane, camera.widthPx(), frame.plan().files());
        for (int i = 0; i < plane.length; i++) {
          codes[channel][i] = bytes[i] & 0xFF;
        }
      } else {
        for (int i = 0; i < plane.length; i++) {
          codes[channel][i] = (int) Math.round(plane[i] * scale);
        }
      }
    }
    return codes;
  }

  /** Rows {@code top} to {@code bottom}, interleaved, each sample less its left neighbour. */
  private static byte[] predicted(int[][] planes, int width, int top, int bottom, boolean eight) {
    int samples = (bottom - top) * width * planes.length;
    ByteBuffer bytes =
        ByteBuffer.allocate(samples * (eight ? 1 : 2)).order(ByteOrder.LITTLE_ENDIAN);
    for (int y = top; y < bottom; y++) {
      for (int x = 0; x < width; x++) {
        for (int[] plane : planes) {
          int difference = plane[y * width + x] - (x > 0 ? plane[y * width + x - 1] : 0);
          if (eight) {
            bytes.put((byte) difference);
          } else {
            bytes.putShort((short) difference);
          }
        }
      }
    }
    return bytes.array();
  }

  private static byte[] deflated(byte[] bytes) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    Deflater deflater = new Deflater(DEFLATE_LEVEL);
    try (DeflaterOutputStream out = new DeflaterOutputStream(packed, deflater)) {
      out.write(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      deflater.end();
    }
    return packed.toByteArray();
  }
}
