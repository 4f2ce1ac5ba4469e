package rondure.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;

/**
 * A Java home like the present one, except that its {@code java} does something before: the command
 * starts its workers with it.
 */
final class OtherJava {
  private OtherJava() {}

  /**
   * @param home where it is made
   * @param script lines of a shell script that end before the real java is run with {@code "$@"}
   * @return the option by which a command takes it for its own
   */
  static String in(Path home, String script) throws IOException {
    Path real = Path.of(System.getProperty("java.home"));
    Path bin = Files.createDirectories(home.resolve("bin"));
    try (Stream<Path> parts = Files.list(real)) {
      for (Path part : parts.filter(part -> !part.endsWith("bin")).toList()) {
        Files.createSymbolicLink(home.resolve(part.getFileName()), part.toRealPath());
      }
    }
    String last = "exec '" + real.resolve("bin/java") + "' \"$@\"";
    Path java = Files.write(bin.resolve("java"), List.of("#!/bin/sh", script, last));
    Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
    return "-Djava.home=" + home;
  }
}
