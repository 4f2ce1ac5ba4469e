package rondure.report.sidecar;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rondure.base.PathNames;

/**
 * What lies in the pictures' folders, looked up once for each. Names are compared without regard to
 * case, since some systems and some programs write IMG_1.XMP.
 */
final class PictureFolders {
  private final Map<Path, Map<String, Path>> byFolder = new HashMap<>();

  /** The file of this name, spelled as it is, or else in other case. */
  Optional<Path> find(Path wanted) {
    if (Files.exists(wanted, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.of(wanted);
    }
    return Optional.ofNullable(listing(wanted.getParent()).get(lower(wanted)));
  }

  private Map<String, Path> listing(Path folder) {
    return byFolder.computeIfAbsent(folder, PictureFolders::read);
  }

  /** A folder that cannot be listed counts as empty: reading or writing there will tell why. */
  private static Map<String, Path> read(Path folder) {
    Map<String, Path> sidecars = new TreeMap<>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
      for (Path entry : entries) {
        String name = lower(entry);
        if (name.endsWith(SidecarNames.EXTENSION)) {
          sidecars.merge(name, entry, (one, two) -> one.compareTo(two) < 0 ? one : two);
        }
      }
    } catch (IOException | DirectoryIteratorException closed) {
      return Map.of();
    }
    return sidecars;
  }

  private static String lower(Path path) {
    return PathNames.last(path).toLowerCase(Locale.ROOT);
  }
}
