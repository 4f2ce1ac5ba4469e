package rondure.intake;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** From a file to linear pixels. The kind of file is told by its content, not by its name. */
public final class FrameDecoder {
  private static final int LOOKED_AT = 32;

  private FrameDecoder() {}

  /**
   * Decodes the pixels of one file.
   *
   * @param path the file
   * @param facts what its metadata say; used are the orientation, for the thumbnail, and the
   *     format, where the content leaves it open
   * @return the green plane in stored orientation (FITS: in display orientation) and a thumbnail
   * @throws FrameProblem when the file cannot be read, is damaged, or is of a kind that is not
   *     read; the message is one sentence and does not name the file
   */
  public static DecodedFrame decode(Path path, ShotFacts facts) throws FrameProblem {
    try (FileBytes file = open(path)) {
      return decode(file, facts);
    } catch (NoSuchFileException | FileNotFoundException missing) {
      throw new FrameProblem("the file is not there any more", missing);
    } catch (AccessDeniedException denied) {
      throw new FrameProblem("the file may not be read; change its permissions", denied);
    } catch (IOException | RuntimeException | StackOverflowError damage) {
      throw new FrameProblem(
          "the file is damaged and cannot be decoded ("
              + reason(damage)
              + "); copy it again from the card",
          damage);
    } catch (OutOfMemoryError large) {
      throw new FrameProblem("the picture is too large for the memory allowed", large);
    }
  }

  private static FileBytes open(Path path) throws IOException, FrameProblem {
    if (Files.isDirectory(path)) {
      throw new FrameProblem("this is a folder, not a picture");
    }
    return FileBytes.open(path);
  }

  private static DecodedFrame decode(FileBytes file, ShotFacts facts)
      throws IOException, FrameProblem {
    if (file.length() == 0) {
      throw new FrameProblem("the file is empty (0 bytes); copy it again from the card");
    }
    Orientation orientation = facts.orientation();
    return switch (FileKind.of(file, facts.format())) {
      case TIFF -> TiffDecoder.decode(file, orientation);
      case PNG -> PngDecoder.decode(file, orientation);
      case JPEG -> JpegDecoder.decode(file, orientation);
      case FITS -> FitsDecoder.decode(file, orientation);
      case RAW -> RawDecoder.decode(file, orientation);
      case HEIC -> throw new FrameProblem("HEIC is not read; export a linear 16-bit TIFF");
      case AVIF -> throw new FrameProblem("AVIF is not read; export a linear 16-bit TIFF");
      case UNKNOWN -> throw unknown(file);
    };
  }

  private static FrameProblem unknown(FileBytes file) throws IOException, FrameProblem {
    byte[] start = file.read(0, (int) Math.min(LOOKED_AT, file.length())).array();
    String what = FileKind.named(start).map(name -> "this is " + name).orElse("unknown content");
    return new FrameProblem(what + ", not a RAW, TIFF, JPEG, PNG or FITS picture");
  }

  private static String reason(Throwable damage) {
    String message = damage.getMessage();
    String name = damage.getClass().getSimpleName();
    if (message == null || message.isBlank()) {
      return name;
    }
    String line = message.lines().findFirst().orElse(name).trim();
    return line.substring(0, Math.min(120, line.length()));
  }
}
