package rondure.intake;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import rondure.base.NaturalOrder;

/** Finds the picture files of a set. */
public final class Scan {
  private static final int DEPTH_MAX = 64;
  private static final Set<String> SKIPPED_FOLDERS = Set.of("__macosx", "@eadir", "lost+found");
  private static final String OUTPUT_MARKER = ".rondure-output";

  private final List<FoundFile> files = new ArrayList<>();
  private final Map<String, Integer> ignored = new TreeMap<>();
  private final List<String> troubles = new ArrayList<>();

  private Scan() {}

  /**
   * Scans folders and takes files given by name. Hidden files and folders and our own output
   * folders are skipped; links that loop end.
   *
   * @param roots existing folders or files; several folders keep their own names in front
   */
  public static ScanResult scan(List<Path> roots) {
    Scan scan = new Scan();
    for (Path root : roots) {
      Path absolute = root.toAbsolutePath().normalize();
      Path base = Files.isDirectory(absolute) && roots.size() == 1 ? absolute : parent(absolute);
      if (Files.isDirectory(absolute)) {
        scan.walk(absolute, base);
      } else {
        scan.addNamed(absolute, base);
      }
    }
    scan.files.sort(Comparator.comparing(FoundFile::relativeName, NaturalOrder.OF_NAMES));
    return new ScanResult(scan.files, scan.ignored, scan.troubles);
  }

  private static Path parent(Path path) {
    return path.getParent() == null ? path : path.getParent();
  }

  private void addNamed(Path file, Path base) {
    String name = file.getFileName().toString();
    add(file, base, FileNames.format(name).orElse(ImageFormat.RAW));
  }

  private void add(Path file, Path base, ImageFormat format) {
    String relative = base.relativize(file).toString().replace('\\', '/');
    files.add(new FoundFile(file, relative, format));
  }

  private void walk(Path root, Path base) {
    try {
      Files.walkFileTree(
          root, EnumSet.of(FileVisitOption.FOLLOW_LINKS), DEPTH_MAX, new Visitor(root, base));
    } catch (IOException e) {
      troubles.add(root.getFileName() + ": this folder could not be read to its end (" + e + ").");
    }
  }

  private final class Visitor extends SimpleFileVisitor<Path> {
    private final Path root;
    private final Path base;

    Visitor(Path root, Path base) {
      this.root = root;
      this.base = base;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      String name = folder.getFileName() == null ? "" : folder.getFileName().toString();
      boolean skipped =
          !folder.equals(root)
              && (name.startsWith(".")
                  || SKIPPED_FOLDERS.contains(name.toLowerCase(java.util.Locale.ROOT)));
      return skipped || Files.exists(folder.resolve(OUTPUT_MARKER))
          ? FileVisitResult.SKIP_SUBTREE
          : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      String name = file.getFileName().toString();
      if (name.startsWith(".") || !attributes.isRegularFile()) {
        return FileVisitResult.CONTINUE;
      }
      FileNames.format(name)
          .ifPresentOrElse(
              format -> add(file, base, format),
              () -> ignored.merge(FileNames.ignoredKind(name), 1, Integer::sum));
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException problem) {
      troubles.add(
          base.relativize(file).toString().replace('\\', '/')
              + ": could not be looked at ("
              + problem.getClass().getSimpleName()
              + "); check its permissions.");
      return FileVisitResult.CONTINUE;
    }
  }
}
