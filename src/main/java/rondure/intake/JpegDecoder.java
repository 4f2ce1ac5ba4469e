package rondure.intake;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Reads JPEGs, grey or colour, with the JDK's reader; a partial picture is refused. */
final class JpegDecoder {
  private static final long LARGEST_FILE = 1L << 30;

  private JpegDecoder() {}

  /**
   * @throws FrameProblem when the file is damaged, cut short or of a kind that is not read
   */
  static DecodedFrame decode(FileBytes file, Orientation orientation)
      throws IOException, FrameProblem {
    JpegHeader header = JpegHeader.read(file);
    CompressedSize.checkJpeg(header.size(), file.length());
    header.size().fitsBeside(3 * header.size().areaPx() + file.length());
    BufferedImage picture = read(file, header);
    Developed developed = Developed.of(header.curve(), !header.profileAt().isEmpty(), 8);
    CodeScale scale = new CodeScale(developed.curve(), 255, true, false);
    FrameAssembler frame = new FrameAssembler(header.size(), PictureRows.colour(picture));
    PictureRows.feed(picture, scale, frame);
    return frame.finish(
        new Levels(CodeScale.WHITE_COUNTS, scale.stepCounts(), developed.linearity()), orientation);
  }

  private static BufferedImage read(FileBytes file, JpegHeader header)
      throws IOException, FrameProblem {
    List<String> warnings = new ArrayList<>();
    ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
    BufferedImage picture;
    try (ImageInputStream in = withoutProfile(file, header)) {
      reader.addIIOReadWarningListener((source, warning) -> warnings.add(warning));
      reader.setInput(in, true, true);
      picture = reader.read(0);
    } finally {
      reader.dispose();
    }
    for (String warning : warnings) {
      if (harmful(warning.toLowerCase(Locale.ROOT))) {
        throw new FrameProblem(
            "the JPEG is damaged or cut short (" + warning + "); copy it again from the card");
      }
    }
    return picture;
  }

  /**
   * The file with the names of its profile segments made unknown: with a profile the JDK's reader
   * would convert colour pictures, but not grey ones, to sRGB.
   */
  private static ImageInputStream withoutProfile(FileBytes file, JpegHeader header)
      throws IOException, FrameProblem {
    if (file.length() > LARGEST_FILE) {
      throw new FrameProblem("the JPEG has more than 1 GB; export it again");
    }
    byte[] bytes = file.read(0, (int) file.length()).array();
    JpegScans.check(bytes, header, file.limits());
    for (long at : header.profileAt()) {
      bytes[(int) at] = '-';
    }
    return new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes));
  }

  /** Stray bytes between markers are common and harmless; lost picture data is not. */
  private static boolean harmful(String warning) {
    return warning.contains("premature")
        || warning.contains("corrupt") && !warning.contains("extraneous")
        || warning.contains("truncated");
  }
}
