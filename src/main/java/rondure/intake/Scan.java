package rondure.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.base.FrameProblem;

/** Finds the picture files of a set. */
public final class Scan {
  private Scan() {}

  /**
   * Scans folders and takes files given by name.
   *
   * <p>Hidden files and folders, folders that systems make for themselves, and our own output
   * folders are skipped. Links are followed; a file that can be reached on several ways, or a link
   * that leads back to a folder above it, counts once. A file given by name whose extension says
   * nothing is taken when its content is a picture.
   *
   * @param roots folders or files; a single folder's files are named from that folder, several
   *     folders keep their own names in front, and where two of those are the same, as much of the
   *     way to them as tells them apart
   */
  public static ScanResult scan(List<Path> roots) {
    List<Path> absolute =
        roots.stream().map(root -> root.toAbsolutePath().normalize()).distinct().toList();
    Map<Path, String> prefixes = RootNames.prefixes(absolute);
    FolderWalk walk = new FolderWalk();
    for (Path root : absolute) {
      if (Files.isDirectory(root)) {
        walk.folder(root, prefixes.get(root));
      } else {
        named(walk, root, prefixes.get(root));
      }
    }
    return walk.result();
  }

  private static void named(FolderWalk walk, Path file, String name) {
    if (!Files.exists(file)) {
      walk.trouble(name + ": this file is not there; check the spelling of its name.");
      return;
    }
    Optional<ImageFormat> format = FileNames.format(name).or(() -> byContent(file));
    format.ifPresentOrElse(
        known -> walk.file(file, name, known),
        () -> walk.trouble(name + ": this file holds no picture known here; it is left out."));
  }

  private static Optional<ImageFormat> byContent(Path file) {
    try {
      return FormatSniffer.sniff(file);
    } catch (IOException | FrameProblem | RuntimeException unreadable) {
      return Optional.empty();
    }
  }
}
