package rondure.intake;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Metadata;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import rondure.base.FrameProblem;

/** Reads what one file says about its exposure. */
public final class FactsReader {
  private FactsReader() {}

  /**
   * The facts of a file; damaged metadata give missing facts.
   *
   * @throws FrameProblem when the file cannot be opened, is empty, or holds no picture we know
   */
  public static ShotFacts read(Path path) throws FrameProblem {
    ImageFormat format = format(path);
    if (format == ImageFormat.FITS) {
      return FitsFacts.read(path);
    }
    try {
      Metadata metadata = ImageMetadataReader.readMetadata(path.toFile());
      return new ExifFacts(metadata, format).facts();
    } catch (ImageProcessingException | IOException | RuntimeException damage) {
      return ShotFacts.unknown(format);
    }
  }

  private static ImageFormat format(Path path) throws FrameProblem {
    ImageFormat hint = FileNames.format(path.getFileName().toString()).orElse(ImageFormat.JPEG);
    if (Files.isDirectory(path)) {
      throw new FrameProblem("this is a folder, not a picture");
    }
    try (FileBytes file = FileBytes.open(path)) {
      if (file.length() == 0) {
        throw new FrameProblem("the file is empty (0 bytes); copy it again from the card");
      }
      FileKind kind = FileKind.of(file, hint);
      if (kind == FileKind.UNKNOWN) {
        byte[] start = file.read(0, (int) Math.min(32, file.length())).array();
        String found = FileKind.named(start).orElse("no picture that is known here");
        throw new FrameProblem(
            "the file holds " + found + "; listed but not measured, copy it again from the card");
      }
      return ImageFormat.valueOf(kind.name());
    } catch (NoSuchFileException missing) {
      throw new FrameProblem("the file is not there any more", missing);
    } catch (AccessDeniedException denied) {
      throw new FrameProblem("the file may not be read; change its permissions", denied);
    } catch (IOException | RuntimeException damage) {
      throw new FrameProblem(
          "the file is damaged and cannot be read; copy it again from the card", damage);
    }
  }
}
