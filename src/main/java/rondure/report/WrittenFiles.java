package rondure.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rondure.base.PathNames;

/**
 * Which files in an output folder the program wrote, by name and content, as the folder's marker
 * lists them: whatever else is there, or was changed since, is somebody's own.
 */
final class WrittenFiles {
  private static final String HEAD =
      """
      This folder holds results written by Rondure, which may replace its own files here.
      It wrote these files, each with the SHA-256 of its content:
      """;

  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64})  (.+)");
  private static final Pattern ESCAPE = Pattern.compile("%([0-9A-F]{4})");
  private static final int NUMBERS_TRIED = 1000;

  private final Path folder;
  private final Map<String, Set<String>> digests = new TreeMap<>();
  private final boolean known;

  private WrittenFiles(Path folder, boolean known) {
    this.folder = folder;
    this.known = known;
  }

  /**
   * What the marker of a folder lists; nothing is known where it lists nothing, or is not there.
   */
  static WrittenFiles of(Path folder) throws IOException {
    Path marker = folder.resolve(OutputFolder.MARKER);
    String text = "";
    if (Files.isRegularFile(marker)) {
      text = new String(Files.readAllBytes(marker), StandardCharsets.UTF_8);
    }
    WrittenFiles files = new WrittenFiles(folder, text.startsWith(HEAD) || text.isEmpty());
    for (String line : text.lines().toList()) {
      Matcher match = LINE.matcher(line);
      if (match.matches()) {
        files.add(plain(match.group(2)), match.group(1));
      }
    }
    return files;
  }

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** A file of this name with this content is ours. */
  void add(String name, String digest) {
    digests.computeIfAbsent(name, any -> new TreeSet<>()).add(digest);
  }

  /** The file of this name is ours only with this content, from now on. */
  void settle(String name, String digest) {
    digests.put(name, new TreeSet<>(Set.of(digest)));
  }

  /** True when there is a file of this name that we did not write, or not as it is now. */
  boolean isForeign(String name) throws IOException {
    Path file = PathNames.below(folder, name);
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS) || !known) {
      return false;
    }
    boolean regular = Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
    return !regular || !digests.getOrDefault(name, Set.of()).contains(digest(file));
  }

  /**
   * Gives such a file another name, {@code keep-yours.txt} for {@code keep.txt}, numbered where
   * that is taken.
   *
   * @return one sentence that says so
   */
  String moveAside(String name) throws IOException {
    Path file = PathNames.below(folder, name);
    String last = PathNames.last(file);
    int dot = last.lastIndexOf('.') > 0 ? last.lastIndexOf('.') : last.length();
    for (int i = 1; i <= NUMBERS_TRIED; i++) {
      String free =
          last.substring(0, dot) + "-yours" + (i == 1 ? "" : "-" + i) + last.substring(dot);
      Path target = PathNames.below(file.getParent(), free);
      if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        Files.move(file, target);
        return name + " was not as Rondure wrote it, so it was kept as " + free + ".";
      }
    }
    throw new IOException("no free name to keep " + name + " under");
  }

  /** The files below a folder that are ours and as we wrote them. */
  Set<Path> unchangedBelow(String subfolder) throws IOException {
    Set<Path> ours = new TreeSet<>();
    for (String name : digests.keySet()) {
      Path file = PathNames.below(folder, name);
      if (name.startsWith(subfolder + "/") && Files.exists(file) && !isForeign(name)) {
        ours.add(file);
      }
    }
    return ours;
  }

  /** False for a folder of an earlier version, whose files all count as ours. */
  boolean isKnown() {
    return known;
  }

  /**
   * The marker's text, without files that are gone.
   *
   * @param coming names of files that are about to come
   */
  byte[] text(Set<String> coming) {
    StringBuilder text = new StringBuilder(HEAD);
    digests.forEach(
        (name, contents) -> {
          if (coming.contains(name) || Files.exists(PathNames.below(folder, name))) {
            contents.forEach(digest -> text.append(digest + "  " + escaped(name) + "\n"));
          }
        });
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** A name on one line: control characters and halves of characters by their numbers. */
  private static String escaped(String name) {
    StringBuilder text = new StringBuilder();
    for (char c : name.toCharArray()) {
      boolean asItIs = c != '%' && !Character.isISOControl(c) && !Character.isSurrogate(c);
      text.append(asItIs ? String.valueOf(c) : String.format("%%%04X", (int) c));
    }
    return text.toString();
  }

  private static String plain(String escaped) {
    return ESCAPE
        .matcher(escaped)
        .replaceAll(m -> Matcher.quoteReplacement("" + (char) Integer.parseInt(m.group(1), 16)));
  }

  private static String digest(Path file) throws IOException {
    MessageDigest digest = sha256();
    try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
      in.transferTo(java.io.OutputStream.nullOutputStream());
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
