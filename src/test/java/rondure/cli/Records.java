package rondure.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The kept measurements in an output folder, as they can be seen from outside. */
final class Records {
  private Records() {}

  static int in(Path out) {
    try {
      return Files.isDirectory(out.resolve("measured")) ? files(out).size() : 0;
    } catch (IOException changing) {
      return 0;
    }
  }

  /** Their files, in the order of their names. */
  static List<Path> files(Path out) throws IOException {
    Path measured = out.resolve("measured");
    return Run.names(measured).stream()
        .filter(name -> name.endsWith(".record"))
        .map(measured::resolve)
        .toList();
  }
}
