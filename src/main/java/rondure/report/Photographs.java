package rondure.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import rondure.base.JpegPicture;

/** Which photographs can be printed. */
final class Photographs {
  private Photographs() {}

  /** Whether the bytes are a JPEG with a size; a damaged one is left out rather than fatal. */
  static boolean canBeShown(JpegPicture picture) {
    byte[] bytes = picture.bytes();
    if (bytes.length < 4 || (bytes[0] & 0xFF) != 0xFF || (bytes[1] & 0xFF) != 0xD8) {
      return false;
    }
    try (ImageInputStream stream =
        ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("jpeg");
      ImageReader reader = readers.next();
      try {
        reader.setInput(stream, true, true);
        return reader.getWidth(0) > 0 && reader.getHeight(0) > 0;
      } finally {
        reader.dispose();
      }
    } catch (IOException e) {
      return false;
    }
  }
}
