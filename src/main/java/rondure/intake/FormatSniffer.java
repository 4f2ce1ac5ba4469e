package rondure.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import rondure.base.FrameProblem;

/** The format of a file by its content. */
public final class FormatSniffer {
  private static final int LOOKED_AT = 32;

  private FormatSniffer() {}

  /**
   * What kind of picture a file holds; empty when its content is no picture known here. A TIFF that
   * holds sensor values is a RAW, whatever its name; the name decides only where the content leaves
   * it open.
   *
   * @throws IOException when the file cannot be opened or read
   * @throws FrameProblem when the file is a picture too damaged to tell
   */
  public static Optional<ImageFormat> sniff(Path path) throws IOException, FrameProblem {
    try (FileBytes file = FileBytes.open(path, ReadingLimits.defaults())) {
      return sniff(file);
    }
  }

  static Optional<ImageFormat> sniff(FileBytes file) throws IOException, FrameProblem {
    ImageFormat hint = FileNames.format(name(file.path())).orElse(ImageFormat.JPEG);
    FileKind kind = FileKind.of(file, hint);
    return kind == FileKind.UNKNOWN
        ? Optional.empty()
        : Optional.of(ImageFormat.valueOf(kind.name()));
  }

  /** The sentence for a file whose content is no picture known here. */
  static String notAPicture(FileBytes file) throws IOException, FrameProblem {
    byte[] start = file.read(0, (int) Math.min(LOOKED_AT, file.length())).array();
    String extension = FileNames.extension(name(file.path()));
    String named =
        extension.isEmpty() ? "the file holds " : "is named ." + extension + " but holds ";
    return FileKind.named(start)
        .map(found -> named + found + ", no picture that is read here; leave it out of the folder")
        .orElse(named + "no picture known here; it may be damaged, copy it again from the card");
  }

  /**
   * A sentence when a file's name says one kind of picture and its content is another, which
   * decides; empty when both agree.
   */
  public static Optional<String> mislabelled(FoundFile file, ImageFormat content) {
    String extension = FileNames.extension(file.relativeName());
    if (content == file.formatByName() || FileNames.format("x." + extension).isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s is named .%s but holds a %s picture; it was read as %s.",
            file.relativeName(),
            extension,
            content,
            content));
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }
}
