package rondure.intake;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.IOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Reads PNGs of 8 and 16 bits (fewer bits count as 8) with the JDK's reader. */
final class PngDecoder {
  private PngDecoder() {}

  /**
   * @throws FrameProblem when the file is damaged or cut short, or has a palette of colours
   */
  static DecodedFrame decode(FileBytes file, Orientation orientation)
      throws IOException, FrameProblem {
    PngChunks png = PngChunks.read(file);
    long unpacked = png.size().areaPx() * png.bitsPerPixel() / 8;
    CompressedSize.checkPacked(png.size(), unpacked, file.length());
    png.size().fitsBeside(unpacked);
    BufferedImage picture = read(file, png);
    if (picture.getColorModel() instanceof IndexColorModel palette && !grey(palette)) {
      throw new FrameProblem(
          "this is a palette-colour PNG, too coarse for stars; export a linear 16-bit TIFF");
    }
    int bits = png.bits() == 16 ? 16 : 8;
    Developed developed = Developed.of(png.tagged(), png.profiled(), bits);
    CodeScale scale = new CodeScale(developed.curve(), (1 << bits) - 1, true, false);
    FrameAssembler frame = new FrameAssembler(png.size(), PictureRows.colour(picture));
    PictureRows.feed(picture, scale, frame);
    return frame.finish(
        new Levels(CodeScale.WHITE_COUNTS, scale.stepCounts(), developed.linearity()), orientation);
  }

  private static boolean grey(IndexColorModel palette) {
    for (int i = 0; i < palette.getMapSize(); i++) {
      if (palette.getRed(i) != palette.getGreen(i) || palette.getBlue(i) != palette.getGreen(i)) {
        return false;
      }
    }
    return true;
  }

  private static BufferedImage read(FileBytes file, PngChunks png) throws IOException {
    ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
    try (PngStream in = new PngStream(file, png.picture())) {
      reader.setInput(in, true, true);
      return reader.read(0);
    } finally {
      reader.dispose();
    }
  }
}
