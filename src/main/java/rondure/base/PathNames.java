package rondure.base;

import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * File names as text, whatever the locale. Systems keep names as bytes, nearly always UTF-8, but a
 * program that runs in the plain C locale (from a timer, for instance) gets to see other letters
 * than ASCII as replacement characters. A path's URI keeps the bytes.
 */
public final class PathNames {
  private static final char REPLACEMENT = '\uFFFD';

  private PathNames() {}

  /** The last part of a path; empty for a root. */
  public static String last(Path path) {
    if (path.getFileName() == null) {
      return "";
    }
    String shown = path.getFileName().toString();
    return shown.indexOf(REPLACEMENT) < 0 ? shown : spelled(path, shown);
  }

  /**
   * The path whose last part has something added, the rest of it byte for byte the same.
   *
   * @param suffix letters that a URI holds as they are
   */
  public static Path withSuffix(Path path, String suffix) {
    return Path.of(URI.create(uri(path) + suffix));
  }

  /**
   * The path whose last part has another extension, the rest of it byte for byte the same. A dot at
   * the beginning of a name begins no extension.
   *
   * @param extension with its dot, letters that a URI holds as they are
   */
  public static Path withExtension(Path path, String extension) {
    String uri = uri(path);
    int dot = uri.lastIndexOf('.');
    boolean any = dot > uri.lastIndexOf('/') + 1;
    return Path.of(URI.create((any ? uri.substring(0, dot) : uri) + extension));
  }

  /**
   * A path below a folder, whatever letters the system can spell.
   *
   * @param relative parts with forward slashes between them, none of them empty or dots alone
   */
  public static Path below(Path folder, String relative) {
    StringBuilder uri = new StringBuilder(uri(folder));
    for (String part : relative.split("/", -1)) {
      if (part.matches("\\.{0,2}")) {
        throw new IllegalArgumentException(relative + " leads out of its folder");
      }
      uri.append('/').append(escaped(part));
    }
    return Path.of(URI.create(uri.toString()));
  }

  /** The bytes of a name as a part of a URI. */
  private static String escaped(String part) {
    StringBuilder text = new StringBuilder();
    for (byte b : part.getBytes(StandardCharsets.UTF_8)) {
      text.append(String.format("%%%02X", b & 0xFF));
    }
    return text.toString();
  }

  private static String uri(Path path) {
    return path.toAbsolutePath().toUri().toString().replaceFirst("/$", "");
  }

  private static String spelled(Path path, String otherwise) {
    String uri = uri(path);
    ByteBuffer bytes = unescaped(uri.substring(uri.lastIndexOf('/') + 1));
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(bytes).toString();
    } catch (CharacterCodingException e) {
      return otherwise;
    }
  }

  /** The bytes of a part of a URI (RFC 3986, section 2.1). */
  private static ByteBuffer unescaped(String part) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int i = 0; i < part.length(); i++) {
      if (part.charAt(i) == '%') {
        bytes.write(Integer.parseInt(part.substring(i + 1, i + 3), 16));
        i += 2;
      } else {
        bytes.write(part.charAt(i));
      }
    }
    return ByteBuffer.wrap(bytes.toByteArray());
  }
}
