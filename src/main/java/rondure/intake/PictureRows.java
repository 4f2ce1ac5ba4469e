package rondure.intake;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;

/** Feeds a picture decoded by the JDK, row by row, into a frame. */
final class PictureRows {
  private PictureRows() {}

  /** True when the picture has colours of its own. */
  static boolean colour(BufferedImage picture) {
    return picture.getColorModel() instanceof IndexColorModel
        || picture.getRaster().getNumBands() >= 3;
  }

  /** Sends the code values of every wanted row through {@code scale} into {@code frame}. */
  static void feed(BufferedImage picture, CodeScale scale, FrameAssembler frame) {
    int[] row = new int[picture.getWidth()];
    float[] codes = new float[picture.getWidth()];
    boolean indexed = picture.getColorModel() instanceof IndexColorModel;
    Channel[] channels = colour(picture) ? Channel.values() : new Channel[] {Channel.GREEN};
    for (int y = 0; y < picture.getHeight(); y++) {
      for (Channel channel : channels) {
        if (frame.wants(channel, y)) {
          int band = channels.length == 1 ? 0 : channel.ordinal();
          if (indexed) {
            lookUp(picture, y, row, band);
          } else {
            picture.getRaster().getSamples(0, y, row.length, 1, band, row);
          }
          for (int x = 0; x < codes.length; x++) {
            codes[x] = row[x];
          }
          scale.toCounts(codes, codes.length);
          frame.take(channel, 0, y, codes, codes.length);
        }
      }
    }
  }

  /** Colours looked up in the palette, 8 bits each. */
  private static void lookUp(BufferedImage picture, int y, int[] row, int band) {
    picture.getRGB(0, y, row.length, 1, row, 0, row.length);
    int shift = 16 - 8 * band;
    for (int x = 0; x < row.length; x++) {
      row[x] = row[x] >> shift & 0xFF;
    }
  }
}
