package rondure.store;

import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import rondure.crew.FrameMeasurement;
import rondure.intake.RawSupport;

/**
 * Which program measures: a digest of the compiled code from file to measurement, and of the Java
 * that runs it. Nobody has to remember to count a version up.
 *
 * <p>Digested are all classes of the packages {@link #PACKAGES} and the names of the Java that runs
 * them (its picture decoders and its mathematics), of the system and of the kind of processor. RAW
 * files depend on LibRaw as well. Not digested are the library that reads metadata, whose answers
 * are in the key of every record, and the binding to LibRaw, which computes nothing.
 */
public final class MeasuringProgram {
  /** Packages whose code a measurement comes out of. */
  static final List<String> PACKAGES = List.of("base", "intake", "stars", "crew", "store");

  private static final List<String> JAVA =
      List.of("java.vm.name", "java.runtime.version", "os.name", "os.arch");

  private MeasuringProgram() {}

  /**
   * 64 hexadecimal digits.
   *
   * @throws IOException when the program's own classes cannot be read
   */
  public static String identity() throws IOException {
    MessageDigest digest = Sha256.digest();
    JAVA.forEach(name -> add(digest, name + "=" + System.getProperty(name, "")));
    addClasses(digest);
    return HexFormat.of().formatHex(digest.digest());
  }

  /** What decodes RAW files besides. */
  static String rawDecoder() {
    return RawSupport.status() instanceof RawSupport.Available available
        ? "LibRaw " + available.version()
        : "no LibRaw";
  }

  private static void addClasses(MessageDigest digest) throws IOException {
    Path place = place();
    if (Files.isDirectory(place)) {
      addClasses(digest, place.resolve("rondure"));
      return;
    }
    try (FileSystem jar = FileSystems.newFileSystem(place)) {
      addClasses(digest, jar.getPath("/rondure"));
    }
  }

  /** The folder or jar that the program's classes come from. */
  private static Path place() throws IOException {
    CodeSource source = FrameMeasurement.class.getProtectionDomain().getCodeSource();
    if (source == null || source.getLocation() == null) {
      throw new IOException("the program's own classes are nowhere to be found");
    }
    try {
      return Path.of(source.getLocation().toURI());
    } catch (URISyntaxException | IllegalArgumentException unusual) {
      throw new IOException("the program's own classes cannot be read", unusual);
    }
  }

  /** The classes of the packages below {@code root}, in the order of their names. */
  static void addClasses(MessageDigest digest, Path root) throws IOException {
    int count = 0;
    for (String name : PACKAGES) {
      for (Path file : classes(root.resolve(name))) {
        add(digest, name + "/" + file.getFileName());
        add(digest, Sha256.hex(bytes(file)));
        count++;
      }
    }
    if (count == 0) {
      throw new IOException("the program's own classes cannot be read");
    }
  }

  private static List<Path> classes(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(".class"))
          .sorted((one, two) -> one.toString().compareTo(two.toString()))
          .toList();
    }
  }

  private static byte[] bytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readAllBytes();
    }
  }

  private static void add(MessageDigest digest, String words) {
    digest.update(words.getBytes(StandardCharsets.UTF_8));
    digest.update((byte) 0);
  }
}
