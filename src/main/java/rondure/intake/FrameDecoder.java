package rondure.intake;

import java.io.IOException;
import java.nio.file.Path;
import rondure.base.FileTrouble;
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
   * @param format what its metadata took it for; decides only where the content does not
   * @param orientation how it is turned for display, for the thumbnail
   * @return the green plane in stored orientation (FITS: in display orientation) and a thumbnail
   * @throws FrameProblem when the file cannot be read, is damaged, or is of a kind that is not
   *     read; the message is one sentence and does not name the file
   */
  public static DecodedFrame decode(Path path, ImageFormat format, Orientation orientation)
      throws FrameProblem {
    return decode(path, format, orientation, ReadingLimits.defaults());
  }

  /** As {@link #decode(Path, ImageFormat, Orientation)}, within other limits. */
  public static DecodedFrame decode(
      Path path, ImageFormat format, Orientation orientation, ReadingLimits limits)
      throws FrameProblem {
    try (FileBytes file = FileBytes.open(path, limits)) {
      return decode(file, format, orientation);
    } catch (IOException trouble) {
      throw FileTrouble.ofPicture(trouble, damaged(FileTrouble.words(trouble)));
    } catch (RuntimeException | StackOverflowError damage) {
      throw new FrameProblem(damaged(reason(damage)), damage);
    } catch (OutOfMemoryError large) {
      throw new FrameProblem("the picture is too large for the memory allowed", large);
    }
  }

  private static DecodedFrame decode(FileBytes file, ImageFormat format, Orientation orientation)
      throws IOException, FrameProblem {
    return switch (FileKind.of(file, format)) {
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

  private static String damaged(String why) {
    String line = why.lines().findFirst().orElse("").trim();
    return "the file is damaged and cannot be decoded ("
        + line.substring(0, Math.min(120, line.length()))
        + "); copy it again from the card";
  }

  private static String reason(Throwable damage) {
    String message = damage.getMessage();
    boolean silent = message == null || message.isBlank();
    return silent ? damage.getClass().getSimpleName() : message;
  }
}
