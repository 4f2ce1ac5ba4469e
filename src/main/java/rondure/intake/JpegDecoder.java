package rondure.intake;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Reads JPEGs, grey or colour, with the JDK's reader; a partial picture is refused. */
final class JpegDecoder {
  private JpegDecoder() {}

  /**
   * @throws FrameProblem when the file is damaged, cut short or of a kind that is not read
   */
  static DecodedFrame decode(FileBytes file, Orientation orientation)
      throws IOException, FrameProblem {
    ByteArrayOutputStream profile = new ByteArrayOutputStream();
    JpegHeader header = JpegHeader.read(file, profile);
    CompressedSize.checkJpeg(header.size(), file.length());
    BufferedImage picture = read(file);
    Optional<ToneCurve> tagged =
        profile.size() == 0 ? Optional.empty() : IccProfile.curve(profile.toByteArray());
    Developed developed = Developed.of(tagged, profile.size() > 0, 8);
    CodeScale scale = new CodeScale(developed.curve(), 255, true, false);
    FrameAssembler frame = new FrameAssembler(header.size(), PictureRows.colour(picture));
    PictureRows.feed(picture, scale, frame);
    return frame.finish(
        new Levels(CodeScale.WHITE_COUNTS, scale.stepCounts(), developed.linearity()), orientation);
  }

  private static BufferedImage read(FileBytes file) throws IOException, FrameProblem {
    List<String> warnings = new ArrayList<>();
    ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
    BufferedImage picture;
    try (FileImageInputStream in = new FileImageInputStream(file.path().toFile())) {
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

  /** Stray bytes between markers are common and harmless; lost picture data is not. */
  private static boolean harmful(String warning) {
    return warning.contains("premature")
        || warning.contains("corrupt") && !warning.contains("extraneous")
        || warning.contains("truncated");
  }
}
