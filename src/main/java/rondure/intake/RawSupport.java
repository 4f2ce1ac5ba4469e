package rondure.intake;

import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.NativeLibrary;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import rondure.base.FrameProblem;
import rondure.base.WorkFolder;

/** Whether camera RAW can be decoded on this computer: looks for LibRaw, once. */
public final class RawSupport {

  /** The answer: the library is there, or what to install. */
  public sealed interface Status permits Available, Absent {}

  /**
   * RAW can be decoded.
   *
   * @param version LibRaw's own version text
   */
  public record Available(String version) implements Status {
    public Available {
      Objects.requireNonNull(version, "version");
    }
  }

  /**
   * RAW cannot be decoded.
   *
   * @param message one sentence that names the package to install
   */
  public record Absent(String message) implements Status {
    public Absent {
      Objects.requireNonNull(message, "message");
    }
  }

  /** First version whose size getters and file opening work as used here: 0.19. */
  private static final int OLDEST = 19 << 8;

  /** System property that names the library's file, for one in an unusual place. */
  private static final String PLACE_PROPERTY = "rondure.libraw";

  private static final int[] SUFFIXES = {25, 24, 23, 22, 21, 20, 19};

  private static final List<String> MAC_FOLDERS =
      List.of("/opt/homebrew/lib", "/usr/local/lib", "/opt/local/lib");

  private RawSupport() {}

  /** Loads the library on first call; later calls answer from memory. */
  public static Status status() {
    return Loaded.STATUS;
  }

  /**
   * The library.
   *
   * @throws FrameProblem naming the package to install when it is absent
   */
  static LibRaw library() throws FrameProblem {
    if (Loaded.STATUS instanceof Absent absent) {
      throw new FrameProblem(absent.message());
    }
    return Loaded.LIBRARIES.get(0);
  }

  /** Initialised by the JVM on first use, under its lock. */
  private static final class Loaded {
    static final List<LibRaw> LIBRARIES = new ArrayList<>();
    static final Status STATUS = load();

    private static Status load() {
      String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
      keepJnaInTemporaryFolder();
      for (String name : names(system)) {
        try {
          LibRaw library = Native.load(name, LibRaw.class, options());
          if (library.libraw_versionNumber() >= OLDEST) {
            LIBRARIES.add(library);
            return new Available(library.libraw_version());
          }
        } catch (UnsatisfiedLinkError | NoClassDefFoundError tryNext) {
          continue;
        }
      }
      return new Absent(advice(system));
    }

    private static Map<String, Object> options() {
      String encoding = System.getProperty("sun.jnu.encoding", "UTF-8");
      return Map.of(Library.OPTION_STRING_ENCODING, encoding);
    }
  }

  /** JNA unpacks its own native part; by default it may do so in the user's home. */
  private static void keepJnaInTemporaryFolder() {
    if (System.getProperty("jna.tmpdir") == null) {
      System.setProperty("jna.tmpdir", temporaryFolder());
    }
  }

  private static String temporaryFolder() {
    try {
      return WorkFolder.ofProgram().toString();
    } catch (IOException noneOfOurs) {
      return System.getProperty("java.io.tmpdir");
    }
  }

  private static List<String> names(String system) {
    String place = System.getProperty(PLACE_PROPERTY, "");
    if (!place.isBlank()) {
      return List.of(place);
    }
    List<String> names = new ArrayList<>(List.of("raw_r", "raw"));
    if (system.contains("win")) {
      names.addAll(List.of("libraw_r", "libraw"));
    } else if (system.contains("mac")) {
      for (String name : List.of("raw_r", "raw")) {
        MAC_FOLDERS.forEach(folder -> NativeLibrary.addSearchPath(name, folder));
      }
    } else {
      for (String stem : List.of("libraw_r.so.", "libraw.so.")) {
        for (int suffix : SUFFIXES) {
          names.add(stem + suffix);
        }
      }
    }
    return names;
  }

  static String advice(String system) {
    String what =
        system.contains("win")
            ? "put libraw.dll from libraw.org on the PATH"
            : system.contains("mac")
                ? "install it with Homebrew (brew install libraw)"
                : "install the package libraw-bin (Debian, Ubuntu) or LibRaw (Fedora)";
    return "camera RAW needs the library LibRaw, which was not found: "
        + what
        + ", or export linear 16-bit TIFFs";
  }
}
