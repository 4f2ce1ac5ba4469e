package rondure.base;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A private temporary folder, for its owner only: crash logs and whatever libraries put down. A
 * lock held as long as the program lives tells it from folders that a killed one left.
 */
public final class WorkFolder implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WorkFolder.class);
  private static final String PREFIX = "rondure-work-";
  private static final String LOCK_NAME = "lock";
  private static final Pattern NAME = Pattern.compile(PREFIX + "(\\d{1,18})-\\d+");

  /** A folder this young may belong to a run that has not taken its lock yet. */
  private static final Duration SETTLED = Duration.ofMinutes(1);

  /**
   * Folders of this process: their lock files must not be opened a second time, because closing any
   * channel of a file gives up all locks that the process has on it.
   */
  private static final Set<Path> OURS = ConcurrentHashMap.newKeySet();

  private static Optional<WorkFolder> ofProgram = Optional.empty();

  private final Path path;
  private final FileChannel channel;

  private WorkFolder(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /**
   * The folder of this program from its first use to its end, in the system's temporary folder.
   * Whoever makes temporary files puts them here, so that a program that is killed leaves nothing
   * but a folder which the next one removes.
   *
   * @throws IOException with words for the user when it cannot be made or the program is ending
   */
  public static Path ofProgram() throws IOException {
    synchronized (OURS) {
      if (ofProgram.isEmpty()) {
        ofProgram = Optional.of(untilTheEnd(inTemporaryFolder()));
      }
      return ofProgram.get().path();
    }
  }

  private static WorkFolder inTemporaryFolder() throws IOException {
    Path root = Path.of(System.getProperty("java.io.tmpdir"));
    removeStale(root);
    try {
      return create(root);
    } catch (IOException e) {
      throw new IOException(
          "no temporary folder can be made in " + root + "; check its free space and rights", e);
    }
  }

  private static WorkFolder untilTheEnd(WorkFolder folder) throws IOException {
    try {
      new EndHook(folder::close, "work-folder-shutdown").add();
      return folder;
    } catch (IllegalStateException ending) {
      folder.close();
      throw new IOException("the program is ending", ending);
    }
  }

  /** Makes a new folder under {@code root}. */
  public static WorkFolder create(Path root) throws IOException {
    String prefix = PREFIX + ProcessHandle.current().pid() + "-";
    Path path = Files.createTempDirectory(root.toAbsolutePath(), prefix);
    OURS.add(path);
    try {
      return new WorkFolder(path, locked(path.resolve(LOCK_NAME)));
    } catch (IOException e) {
      // As when the program is asked to end at this moment.
      deleteTree(path);
      OURS.remove(path);
      throw e;
    }
  }

  private static FileChannel locked(Path lockFile) throws IOException {
    FileChannel channel =
        FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      channel.lock();
      return channel;
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  /** Where it is, absolute. */
  public Path path() {
    return path;
  }

  /** Removes the folder and all in it. */
  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      LOG.debug("lock of {} not released", path, e);
    }
    deleteTree(path);
    OURS.remove(path);
  }

  /** Removes the folders under {@code root} that runs left behind which no longer live. */
  public static void removeStale(Path root) {
    Path absolute = root.toAbsolutePath();
    try (DirectoryStream<Path> folders = Files.newDirectoryStream(absolute, PREFIX + "*")) {
      for (Path folder : folders) {
        if (!OURS.contains(folder) && isStale(folder)) {
          deleteTree(folder);
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      LOG.debug("{} not searched for old work folders", root, e);
    }
  }

  private static boolean isStale(Path folder) {
    Matcher name = NAME.matcher(folder.getFileName().toString());
    if (!name.matches() || !Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    boolean alive = ProcessHandle.of(Long.parseLong(name.group(1))).isPresent();
    return (!alive || isSettled(folder)) && isUnlocked(folder.resolve(LOCK_NAME));
  }

  private static boolean isSettled(Path folder) {
    try {
      Instant changed = Files.getLastModifiedTime(folder).toInstant();
      return changed.isBefore(Instant.now().minus(SETTLED));
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean isUnlocked(Path lockFile) {
    if (!Files.exists(lockFile, LinkOption.NOFOLLOW_LINKS)) {
      return true;
    }
    try (FileChannel channel =
            FileChannel.open(lockFile, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
        FileLock lock = channel.tryLock()) {
      return lock != null;
    } catch (IOException | OverlappingFileLockException e) {
      return false;
    }
  }

  private static void deleteTree(Path root) {
    try {
      Files.walkFileTree(root, new Deleter());
    } catch (IOException e) {
      LOG.debug("{} not removed", root, e);
    }
  }

  private static final class Deleter extends SimpleFileVisitor<Path> {
    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      Files.deleteIfExists(file);
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException trouble) {
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException trouble) throws IOException {
      Files.deleteIfExists(folder);
      return FileVisitResult.CONTINUE;
    }
  }
}
