package rondure.report;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Makes and removes folders with all that belongs to them. */
final class FolderTree {
  private FolderTree() {}

  /**
   * Makes a folder and those above it.
   *
   * @param folder absolute
   * @return the folders that were not there before, the innermost first
   */
  static List<Path> make(Path folder) throws IOException {
    List<Path> missing = new ArrayList<>();
    for (Path at = folder; at != null && !Files.exists(at); at = at.getParent()) {
      missing.add(at);
    }
    Files.createDirectories(folder);
    return missing;
  }

  /** Undoes {@link #make}, as far as the folders are empty. */
  static void unmake(List<Path> made) throws IOException {
    try {
      for (Path folder : made) {
        Files.deleteIfExists(folder);
      }
    } catch (DirectoryNotEmptyException inUse) {
      // Somebody else put something in, which is not ours to remove.
    }
  }

  /** Removes a folder and all in it, links unfollowed; nothing when it is not there. */
  static void delete(Path root) throws IOException {
    deleteAllBut(Set.of(), root);
  }

  /** The same, but some files stay and the folders that hold them. */
  static void deleteAllBut(Set<Path> kept, Path root) throws IOException {
    if (!Files.isDirectory(root, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Files.walkFileTree(
        root,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            if (!kept.contains(file)) {
              Files.delete(file);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path directory, IOException problem)
              throws IOException {
            if (kept.stream().noneMatch(file -> file.startsWith(directory))) {
              Files.delete(directory);
            }
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
