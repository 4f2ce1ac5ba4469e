package rondure.sim;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Writes JPEG with the sRGB curve and an Exif segment (APP1) behind the start marker. */
final class JpegFile {
  private static final int START_BYTES = 2;
  private static final byte[] EXIF_MARK = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);

  private JpegFile() {}

  static void write(SimFrame frame, OutputStream out) throws IOException {
    byte[] picture = compressed(picture(frame), frame.plan().files().jpegQuality());
    out.write(picture, 0, START_BYTES);
    if (!frame.plan().files().withoutExif()) {
      out.write(exifSegment(frame));
    }
    out.write(picture, START_BYTES, picture.length - START_BYTES);
  }

  private static BufferedImage picture(SimFrame frame) {
    int width = frame.widthPx();
    int height = frame.heightPx();
    float[][] linear = Develop.linear(frame);
    byte[][] planes = new byte[linear.length][];
    for (int channel = 0; channel < linear.length; channel++) {
      planes[channel] = Develop.eightBit(linear[channel], width, frame.plan().files());
    }
    boolean grey = planes.length == 1;
    BufferedImage image =
        new BufferedImage(
            width, height, grey ? BufferedImage.TYPE_BYTE_GRAY : BufferedImage.TYPE_INT_RGB);
    int[] row = new int[width];
    for (int y = 0; y < height; y++) {
      for (int band = 0; band < planes.length; band++) {
        for (int x = 0; x < width; x++) {
          row[x] = planes[band][y * width + x] & 0xFF;
        }
        image.getRaster().setSamples(0, y, width, 1, band, row);
      }
    }
    return image;
  }

  private static byte[] compressed(BufferedImage image, int quality) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (ImageOutputStream stream = ImageIO.createImageOutputStream(bytes)) {
      ImageWriteParam settings = writer.getDefaultWriteParam();
      settings.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      settings.setCompressionQuality(quality / 100f);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(image, null, null), settings);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  private static byte[] exifSegment(SimFrame frame) throws IOException {
    Ifd main = new Ifd();
    Exif.describe(frame, main);
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    body.writeBytes(EXIF_MARK);
    body.writeBytes(new byte[] {'I', 'I', 42, 0, 8, 0, 0, 0});
    body.writeBytes(main.toBytes(8));
    int size = body.size() + 2;
    ByteArrayOutputStream segment = new ByteArrayOutputStream();
    segment.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE1, (byte) (size >> 8), (byte) size});
    body.writeTo(segment);
    return segment.toByteArray();
  }
}
