package rondure.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** What the decoder tests share: bytes to a decoded frame. */
final class Decoding {
  private Decoding() {}

  static DecodedFrame decode(byte[] file) throws FrameProblem {
    return decode(file, Orientation.NORMAL);
  }

  static DecodedFrame decode(byte[] file, Orientation orientation) throws FrameProblem {
    try {
      Path path = Files.createTempFile("frame", ".bin");
      try {
        Files.write(path, file);
        return FrameDecoder.decode(path, ImageFormat.JPEG, orientation);
      } finally {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The message with which a file is refused; fails when it is not refused. */
  static String refusal(byte[] file) {
    try {
      decode(file);
    } catch (FrameProblem problem) {
      return problem.getMessage();
    }
    throw new AssertionError("was decoded");
  }

  static ShotFacts facts(Orientation orientation) {
    ShotFacts none = ShotFacts.unknown(ImageFormat.JPEG);
    return new ShotFacts(
        none.format(),
        0,
        0,
        orientation,
        none.captureTime(),
        none.exposureSeconds(),
        none.fNumber(),
        none.iso(),
        none.focalLengthMm(),
        none.focalLength35Mm(),
        none.pixelPitchMicrons(),
        none.ambientTemperatureC(),
        none.cameraModel(),
        none.lensModel(),
        false);
  }

  static java.awt.image.BufferedImage thumbnail(DecodedFrame frame) {
    try {
      return ImageIO.read(new ByteArrayInputStream(frame.thumbnail().bytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
