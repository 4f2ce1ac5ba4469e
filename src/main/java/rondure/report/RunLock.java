package rondure.report;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A lock file by which a run holds a folder; the system frees it when the run dies. */
final class RunLock {
  static final String NAME = ".rondure-lock";

  private static final int TRIES = 3;

  private final Path file;
  private final FileChannel channel;

  private RunLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Takes the lock of a folder.
   *
   * @throws OutputProblem when another run holds it
   */
  static RunLock of(Path folder) throws OutputProblem, IOException {
    Path file = folder.resolve(NAME);
    for (int i = 0; i < TRIES; i++) {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (!isTaken(channel)) {
        channel.close();
        throw new OutputProblem(
            folder + " is in use by another run; wait for it or name another folder with --out.");
      }
      // A run that just ended may have removed the file that was opened here.
      if (Files.exists(file)) {
        return new RunLock(file, channel);
      }
      channel.close();
    }
    throw new FileSystemException(file.toString(), null, "its lock file keeps vanishing");
  }

  /** Gives the lock back and removes its file. */
  void release() throws IOException {
    try {
      Files.deleteIfExists(file);
    } finally {
      channel.close();
    }
  }

  private static boolean isTaken(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }
}
