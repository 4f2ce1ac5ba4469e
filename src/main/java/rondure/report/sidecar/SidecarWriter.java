package rondure.report.sidecar;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rondure.base.PathNames;

/**
 * Writes sidecars next to pictures. Each appears whole: it is written under a hidden name in the
 * same folder, forced to the disk, and moved. What a sidecar was before its first change stays as
 * one backup beside it. When the program is asked to end, the sidecar at hand is finished and no
 * other begun.
 */
final class SidecarWriter implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SidecarWriter.class);

  /** What is added to the name of a sidecar for its backup. */
  static final String BACKUP = ".before-rondure";

  private static final String PARTIAL = ".rondure-partial-";

  private final Thread shutdownHook = new Thread(this::end, "sidecars-shutdown");
  private boolean ended;

  SidecarWriter() {
    try {
      Runtime.getRuntime().addShutdownHook(shutdownHook);
    } catch (IllegalStateException e) {
      ended = true;
    }
  }

  /**
   * Writes one sidecar.
   *
   * @param place where
   * @param text the whole file
   * @throws InterruptedIOException when the program is ending
   * @throws IOException when it could not be written; what was there is still there
   */
  synchronized void write(SidecarPlace place, String text) throws IOException {
    if (ended) {
      throw new InterruptedIOException("the run was stopped while it wrote sidecars");
    }
    Path partial = place.path().resolveSibling(PARTIAL + ProcessHandle.current().pid());
    try {
      if (place.isThere()) {
        backUp(place.path(), partial);
        replace(place.path(), partial, text);
      } else {
        fill(partial, text, StandardOpenOption.CREATE_NEW);
        Files.move(partial, place.path());
      }
    } finally {
      Files.deleteIfExists(partial);
    }
  }

  private static void backUp(Path sidecar, Path partial) throws IOException {
    Path backup = PathNames.withSuffix(sidecar, BACKUP);
    if (!Files.exists(backup, LinkOption.NOFOLLOW_LINKS)) {
      Files.copy(sidecar, partial, copied());
      Files.move(partial, backup);
    }
  }

  /** Rights and other attributes of the file stay what they were. */
  private static void replace(Path sidecar, Path partial, String text) throws IOException {
    Files.copy(sidecar, partial, copied());
    fill(partial, text, StandardOpenOption.TRUNCATE_EXISTING);
    try {
      Files.move(
          partial, sidecar, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(partial, sidecar, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static CopyOption[] copied() {
    return new CopyOption[] {StandardCopyOption.COPY_ATTRIBUTES, LinkOption.NOFOLLOW_LINKS};
  }

  private static void fill(Path file, String text, OpenOption how) throws IOException {
    try (FileChannel out = FileChannel.open(file, Set.of(StandardOpenOption.WRITE, how))) {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
      out.force(true);
    }
  }

  /** Removes what a killed run left half-written in a folder, as far as that is possible. */
  synchronized void clear(Path folder) {
    try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, PARTIAL + "*")) {
      for (Path file : left) {
        if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && !isInUse(file)) {
          Files.delete(file);
        }
      }
    } catch (IOException | DirectoryIteratorException closed) {
      LOG.debug("{} not cleared", folder, closed);
    }
  }

  private static boolean isInUse(Path file) {
    String number = file.getFileName().toString().substring(PARTIAL.length());
    boolean plain = number.matches("\\d{1,18}");
    return !plain
        || Long.parseLong(number) != ProcessHandle.current().pid()
            && ProcessHandle.of(Long.parseLong(number)).isPresent();
  }

  @Override
  public void close() {
    try {
      Runtime.getRuntime().removeShutdownHook(shutdownHook);
    } catch (IllegalStateException e) {
      // The program is ending: the hook does the same.
    }
    end();
  }

  private synchronized void end() {
    ended = true;
  }
}
