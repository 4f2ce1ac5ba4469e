package rondure.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import rondure.base.FileTrouble;
import rondure.base.FrameProblem;

/** Reads what one file says about its exposure; never its owner, serial numbers or position. */
public final class FactsReader {
  private static final String DAMAGED =
      "the file is damaged and cannot be read; copy it again from the card";

  private FactsReader() {}

  /**
   * The facts of a file; damaged metadata give missing facts.
   *
   * @throws FrameProblem when the file cannot be opened, is empty, or holds no picture we know
   */
  public static ShotFacts read(Path path) throws FrameProblem {
    return read(path, ReadingLimits.defaults());
  }

  /** As {@link #read(Path)}, within other limits. */
  public static ShotFacts read(Path path, ReadingLimits limits) throws FrameProblem {
    try (FileBytes file = FileBytes.open(path, limits)) {
      return read(file);
    } catch (IOException trouble) {
      throw FileTrouble.ofPicture(trouble, DAMAGED);
    } catch (RuntimeException | StackOverflowError damage) {
      throw new FrameProblem(DAMAGED, damage);
    }
  }

  private static ShotFacts read(FileBytes file) throws IOException, FrameProblem {
    Optional<ImageFormat> known = FormatSniffer.sniff(file);
    if (known.isEmpty()) {
      throw new FrameProblem(FormatSniffer.notAPicture(file));
    }
    ImageFormat format = known.get();
    return switch (format) {
      case FITS -> FitsFacts.read(file);
      case RAW -> CanonHeap.isOne(file) ? CanonHeap.facts(file) : exif(file, format);
      default -> exif(file, format);
    };
  }

  private static ShotFacts exif(FileBytes file, ImageFormat format) {
    return new ExifFacts(MetadataReading.of(file, format), format).facts();
  }
}
