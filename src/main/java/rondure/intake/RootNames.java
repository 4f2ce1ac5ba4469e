package rondure.intake;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rondure.base.PathNames;

/** What the files below each root of a scan are called by. */
final class RootNames {
  private RootNames() {}

  /**
   * For each folder what stands in front of its files' names, for each file its name. One folder
   * alone has the empty prefix; several get as many of their last name parts as make them differ.
   *
   * @param roots absolute, normalised, all different
   */
  static Map<Path, String> prefixes(List<Path> roots) {
    Map<Path, String> prefixes = new LinkedHashMap<>();
    if (roots.size() == 1 && Files.isDirectory(roots.get(0))) {
      prefixes.put(roots.get(0), "");
      return prefixes;
    }
    int deepest = roots.stream().mapToInt(Path::getNameCount).max().orElse(1);
    for (Path root : roots) {
      String name = tail(root, 1);
      for (int parts = 2; parts <= deepest && shared(name, root, roots); parts++) {
        name = tail(root, parts);
      }
      prefixes.put(root, name);
    }
    return prefixes;
  }

  private static boolean shared(String name, Path root, List<Path> roots) {
    int parts = (int) name.chars().filter(c -> c == '/').count() + 1;
    return roots.stream()
        .filter(other -> !other.equals(root))
        .anyMatch(other -> tail(other, parts).equalsIgnoreCase(name));
  }

  /** The last {@code parts} parts of a path, forward slashes; all of it when it has fewer. */
  static String tail(Path path, int parts) {
    int count = path.getNameCount();
    if (count == 0) {
      return "root";
    }
    StringBuilder name = new StringBuilder();
    for (int i = Math.max(0, count - parts); i < count; i++) {
      name.append(name.isEmpty() ? "" : "/").append(PathNames.last(path.getName(i)));
    }
    return name.toString();
  }
}
