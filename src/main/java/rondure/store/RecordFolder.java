package rondure.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Record files in one folder, {@code <key>.record} each; a file that is being written is called
 * {@code <key>-<number>.new}. Links are never followed, and nothing is removed but regular files of
 * such a name that begin as records do.
 */
final class RecordFolder {
  private static final String RECORD = ".record";
  private static final Pattern RECORD_NAME = Pattern.compile("([0-9a-f]{64})\\.record");
  private static final Pattern NEW_NAME = Pattern.compile("([0-9a-f]{64})-\\d{1,9}\\.new");

  private final Path folder;
  private final AtomicInteger written = new AtomicInteger();

  private RecordFolder(Path folder) {
    this.folder = folder;
  }

  /**
   * The folder, made when it is not there; what a killed run began to write in it is cleared away.
   *
   * @throws IOException when it cannot be made, or something else lies in its place
   */
  static RecordFolder open(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      Files.createDirectory(folder);
    }
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileSystemException(folder.toString(), null, "it is no folder of its own");
    }
    RecordFolder opened = new RecordFolder(folder);
    opened.removeQuietly(NEW_NAME, key -> true);
    return opened;
  }

  /** The folder as it is, for reading; empty when there is none, or something else of its name. */
  static Optional<RecordFolder> existing(Path folder) {
    return Optional.of(folder)
        .filter(place -> Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS))
        .map(RecordFolder::new);
  }

  boolean isEmpty() {
    try {
      return find(RECORD_NAME, key -> true).isEmpty();
    } catch (IOException unreadable) {
      return true;
    }
  }

  /** The bytes of a record; empty when there is none of a sensible size. */
  Optional<byte[]> read(String key) throws IOException {
    Path file = file(key);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    try (InputStream in = opened(file)) {
      byte[] bytes = in.readNBytes(RecordFile.PACKED_BYTES_MAX + 1);
      return bytes.length > RecordFile.PACKED_BYTES_MAX ? Optional.empty() : Optional.of(bytes);
    }
  }

  /** Writes a record; it is there whole or not at all. */
  void write(String key, byte[] record) throws IOException {
    Path file = file(key);
    boolean there = Files.exists(file, LinkOption.NOFOLLOW_LINKS);
    if (there && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileSystemException(file.toString(), null, "something else has its name");
    }
    Path begun = folder.resolve(key + "-" + written.incrementAndGet() + ".new");
    try {
      Files.write(begun, record, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      Files.move(begun, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(begun);
    }
  }

  /** Removes the records whose keys are not wanted any more, as far as that is possible. */
  void removeUnless(Predicate<String> wanted) {
    removeQuietly(RECORD_NAME, wanted.negate());
  }

  private void removeQuietly(Pattern names, Predicate<String> unwanted) {
    try {
      for (Path file : find(names, unwanted)) {
        if (isOurs(file)) {
          Files.delete(file);
        }
      }
    } catch (IOException kept) {
      // It stays, and the next run tries again.
    }
  }

  private List<Path> find(Pattern names, Predicate<String> keys) throws IOException {
    List<Path> found = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        Matcher name = names.matcher(file.getFileName().toString());
        if (name.matches() && keys.test(name.group(1))) {
          found.add(file);
        }
      }
    } catch (DirectoryIteratorException unreadable) {
      throw unreadable.getCause();
    }
    return found;
  }

  /** True for a regular file that begins as a record does, as far as it goes. */
  private static boolean isOurs(Path file) throws IOException {
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    try (InputStream in = opened(file)) {
      byte[] start = in.readNBytes(RecordFile.MAGIC.length());
      return RecordFile.MAGIC.startsWith(new String(start, StandardCharsets.ISO_8859_1));
    }
  }

  private static InputStream opened(Path file) throws IOException {
    return Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS);
  }

  private Path file(String key) {
    return folder.resolve(key + RECORD);
  }
}
