package rondure.report.sidecar;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rondure.base.FileTrouble;

/** Reads a sidecar that somebody else may have written. */
final class ExistingSidecar {
  private static final int MEGABYTE = 1 << 20;

  /** Sidecars with many brush strokes reach some megabytes. */
  static final int LARGEST_BYTES = 16 * MEGABYTE;

  /** The XML declaration (XML 1.0, productions 23 and 80) up to the name of the encoding. */
  private static final Pattern DECLARED =
      Pattern.compile("<\\?xml[^>]*?\\sencoding\\s*=\\s*[\"']([^\"'>]*)");

  /** Names of the encodings that XMP may have, and of their common part. */
  private static final Set<String> UNICODE =
      Set.of("UTF-8", "UTF8", "UTF-16", "UTF-16LE", "UTF-16BE", "US-ASCII", "ASCII");

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private ExistingSidecar() {}

  /**
   * The text of a sidecar: UTF-8, or UTF-16 with its mark, as XMP may be spelled.
   *
   * @throws SidecarProblem when it is a link, no file, too large, or no such text
   */
  static String read(Path path) throws SidecarProblem {
    if (Files.isSymbolicLink(path)) {
      throw new SidecarProblem("it is a link to another place");
    }
    if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
      throw new SidecarProblem("it is no file");
    }
    return text(bytes(path));
  }

  private static byte[] bytes(Path path) throws SidecarProblem {
    try (var in = Files.newInputStream(path, LinkOption.NOFOLLOW_LINKS)) {
      byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
      if (bytes.length > LARGEST_BYTES) {
        throw new SidecarProblem("it is larger than " + LARGEST_BYTES / MEGABYTE + " MB");
      }
      return bytes;
    } catch (IOException e) {
      throw new SidecarProblem("it could not be read (" + FileTrouble.words(e) + ")", e);
    }
  }

  private static String text(byte[] bytes) throws SidecarProblem {
    try {
      CharSequence text = charset(bytes).newDecoder().decode(ByteBuffer.wrap(bytes));
      boolean marked = text.length() > 0 && text.charAt(0) == BYTE_ORDER_MARK;
      String plain = text.subSequence(marked ? 1 : 0, text.length()).toString();
      requireUnicode(plain);
      return plain;
    } catch (CharacterCodingException e) {
      throw new SidecarProblem("it is no text in UTF-8 or UTF-16", e);
    }
  }

  /** Bytes of another encoding may look like UTF-8 and mean other letters. */
  private static void requireUnicode(String text) throws SidecarProblem {
    Matcher declared = DECLARED.matcher(text);
    if (declared.lookingAt() && !UNICODE.contains(declared.group(1).toUpperCase(Locale.ROOT))) {
      throw new SidecarProblem("it is no text in UTF-8 or UTF-16");
    }
  }

  /** By the mark of byte order (Unicode Standard, section 23.8). */
  private static Charset charset(byte[] bytes) {
    if (bytes.length >= 2) {
      int mark = (bytes[0] & 0xFF) << 8 | bytes[1] & 0xFF;
      if (mark == 0xFEFF || mark == 0xFFFE) {
        return mark == 0xFEFF ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
      }
    }
    return StandardCharsets.UTF_8;
  }

  /**
   * Stops at a file that somebody protected: a folder that may be written would let it be replaced
   * all the same.
   *
   * @throws SidecarProblem when it is read-only
   */
  static void requireWritable(Path path) throws SidecarProblem {
    try {
      if (!Files.isWritable(path) || isProtected(path)) {
        throw new SidecarProblem("it is read-only");
      }
    } catch (IOException e) {
      throw new SidecarProblem("it could not be looked at (" + FileTrouble.words(e) + ")", e);
    }
  }

  /** The owner's own wish, which an administrator's rights hide. */
  private static boolean isProtected(Path path) throws IOException {
    FileStore store = Files.getFileStore(path);
    return store.supportsFileAttributeView(PosixFileAttributeView.class)
        && !Files.getPosixFilePermissions(path).contains(PosixFilePermission.OWNER_WRITE);
  }
}
