package rondure.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The folder that holds a run's results, and nothing that the program did not write.
 *
 * <p>A marker file makes the folder ours; a lock keeps a second run out. Files are written into a
 * hidden folder inside and moved into place together by {@link #publish()}, so that an output is
 * there whole or not at all.
 */
public final class OutputFolder implements AutoCloseable {

  /** Name of the file that marks a folder as ours. */
  public static final String MARKER = ".rondure-output";

  private static final String MARKER_TEXT =
      "This folder holds results written by Rondure, which may replace its own files here.\n";
  private static final String LOCK = ".rondure-lock";
  private static final String PARTIAL = ".rondure-partial";
  private static final int SIBLINGS_TRIED = 1000;

  private final Path folder;
  private final FileChannel lockChannel;
  private final FileLock lock;
  private final boolean isNew;
  private final List<String> written = new ArrayList<>();
  private boolean published;

  private OutputFolder(Path folder, boolean isNew, FileChannel lockChannel, FileLock lock) {
    this.folder = folder;
    this.isNew = isNew;
    this.lockChannel = lockChannel;
    this.lock = lock;
  }

  /** What a run writes into its folder. */
  @FunctionalInterface
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Opens the folder that the user named: new, empty, or ours.
   *
   * @throws OutputProblem when it holds foreign files, is in use, or cannot be written
   */
  public static OutputFolder named(Path folder) throws OutputProblem {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new OutputProblem(folder + " is a file, not a folder; give --out another place.");
    }
    if (isForeign(folder)) {
      throw new OutputProblem(
          folder
              + " holds files that Rondure did not write; nothing was touched. Give --out a new or"
              + " empty folder.");
    }
    return open(folder);
  }

  /**
   * Opens the default folder of an input: {@code <input>-rondure} beside it, a numbered sibling
   * where that name is taken by foreign files, or in {@code currentFolder} where the place beside
   * the input cannot be written or is a removable drive or a root.
   *
   * @throws OutputProblem when no such folder can be made, or ours is in use
   */
  public static OutputFolder beside(Path input, Path currentFolder) throws OutputProblem {
    Path absolute = input.toAbsolutePath().normalize();
    Path parent = absolute.getParent();
    String name = absolute.getFileName() == null ? "night" : absolute.getFileName().toString();
    boolean besideInput =
        parent != null
            && parent.getNameCount() > 0
            && Files.isWritable(parent)
            && !isRemovable(absolute);
    Path place = besideInput ? parent : currentFolder.toAbsolutePath();
    for (int i = 1; i <= SIBLINGS_TRIED; i++) {
      Path folder = place.resolve(name + "-rondure" + (i == 1 ? "" : "-" + i));
      if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)
          || Files.isDirectory(folder) && !isForeign(folder)) {
        return open(folder);
      }
    }
    throw new OutputProblem(
        "No free folder name beside " + place + "; name an output folder with --out.");
  }

  /** The folder, absolute. */
  public Path path() {
    return folder;
  }

  /**
   * Writes one file aside; it appears under {@code name} at {@link #publish()}.
   *
   * @throws IOException when the disk is full or the folder vanished
   */
  public void write(String name, Content content) throws IOException {
    Path partial = Files.createDirectories(folder.resolve(PARTIAL));
    try (OutputStream out = Files.newOutputStream(partial.resolve(name))) {
      content.writeTo(out);
    }
    written.add(name);
  }

  /** Moves everything written so far into place, each file whole. */
  public void publish() throws IOException {
    Path partial = folder.resolve(PARTIAL);
    for (String name : written) {
      moveWhole(partial.resolve(name), folder.resolve(name));
    }
    written.clear();
    published = true;
  }

  /** Removes what was not published, and the folder when it was new and stays empty. */
  @Override
  public void close() {
    try {
      deleteTree(folder.resolve(PARTIAL));
      lock.release();
      lockChannel.close();
      Files.deleteIfExists(folder.resolve(LOCK));
      if (isNew && !published) {
        Files.deleteIfExists(folder.resolve(MARKER));
        Files.deleteIfExists(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static OutputFolder open(Path folder) throws OutputProblem {
    Path absolute = folder.toAbsolutePath().normalize();
    try {
      boolean isNew = !Files.exists(absolute);
      Files.createDirectories(absolute);
      FileChannel channel =
          FileChannel.open(
              absolute.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock lock = tryLock(channel);
      if (lock == null) {
        channel.close();
        throw new OutputProblem(
            absolute + " is in use by another run; wait for it or name another folder with --out.");
      }
      Files.write(absolute.resolve(MARKER), MARKER_TEXT.getBytes(StandardCharsets.UTF_8));
      deleteTree(absolute.resolve(PARTIAL));
      return new OutputFolder(absolute, isNew, channel, lock);
    } catch (IOException e) {
      throw new OutputProblem(
          "Cannot write to " + absolute + " (" + e + "); name another folder with --out.", e);
    }
  }

  private static FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    }
  }

  private static boolean isForeign(Path folder) throws OutputProblem {
    if (!Files.isDirectory(folder) || Files.exists(folder.resolve(MARKER))) {
      return false;
    }
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.anyMatch(entry -> !entry.getFileName().toString().equals(LOCK));
    } catch (IOException e) {
      throw new OutputProblem("Cannot read " + folder + " (" + e + ").", e);
    }
  }

  /** Places where desktop systems mount cards and sticks. */
  private static boolean isRemovable(Path path) {
    return Stream.of("/media", "/run/media", "/mnt", "/Volumes").anyMatch(path::startsWith);
  }

  private static void moveWhole(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static void deleteTree(Path root) throws IOException {
    if (!Files.isDirectory(root, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Files.walkFileTree(
        root,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path directory, IOException problem)
              throws IOException {
            Files.delete(directory);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
