package rondure.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.stream.Stream;
import rondure.base.FileTrouble;
import rondure.base.PathNames;

/** Finds where results go, without making or changing anything. */
public final class OutputPlace {
  private static final int SIBLINGS_TRIED = 1000;

  private OutputPlace() {}

  /**
   * The folder that the user named: new, empty, or ours.
   *
   * @throws OutputProblem when it is a file or holds foreign files
   */
  public static Path named(Path folder) throws OutputProblem {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new OutputProblem(folder + " is a file, not a folder; give --out another place.");
    }
    if (isForeign(folder)) {
      throw new OutputProblem(
          folder
              + " holds files that Rondure did not write; nothing was touched. Give --out a new or"
              + " empty folder.");
    }
    return folder;
  }

  /**
   * The default folder of an input: {@code <input>-rondure} beside it, a numbered sibling where
   * that name is taken by foreign files.
   *
   * @param currentFolder used where the place beside the input cannot be written or is a removable
   *     drive or a root
   * @throws OutputProblem when there is no such name
   */
  public static Path beside(Path input, Path currentFolder) throws OutputProblem {
    Path absolute = input.toAbsolutePath().normalize();
    Path place = hasPlaceBeside(absolute) ? absolute.getParent() : currentFolder.toAbsolutePath();
    Path plain =
        absolute.getFileName() == null
            ? place.resolve("night")
            : place.resolve(absolute.getFileName());
    for (int i = 1; i <= SIBLINGS_TRIED; i++) {
      Path folder = PathNames.withSuffix(plain, "-rondure" + (i == 1 ? "" : "-" + i));
      boolean free = !Files.exists(folder, LinkOption.NOFOLLOW_LINKS);
      if (free || Files.isDirectory(folder) && !isForeign(folder)) {
        return folder;
      }
    }
    throw new OutputProblem(
        "No free folder name beside " + place + "; name an output folder with --out.");
  }

  /** True when the folder is there and holds files, but not our marker. */
  private static boolean isForeign(Path folder) throws OutputProblem {
    if (!Files.isDirectory(folder) || Files.exists(folder.resolve(OutputFolder.MARKER))) {
      return false;
    }
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.anyMatch(entry -> !entry.getFileName().toString().equals(RunLock.NAME));
    } catch (IOException e) {
      throw new OutputProblem(
          "Cannot read " + folder + " (" + FileTrouble.words(e) + "); name another with --out.", e);
    }
  }

  private static boolean hasPlaceBeside(Path absolute) {
    Path parent = absolute.getParent();
    return parent != null
        && parent.getNameCount() > 0
        && Files.isWritable(parent)
        && !isRemovable(absolute);
  }

  /** Places where desktop systems mount cards and sticks. */
  private static boolean isRemovable(Path path) {
    return Stream.of("/media", "/run/media", "/mnt", "/Volumes").anyMatch(path::startsWith);
  }
}
