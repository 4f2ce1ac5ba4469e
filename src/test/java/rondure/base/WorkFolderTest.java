package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorkFolderTest {
  /** Above the largest process number of Linux, 2^22. */
  private static final long NO_PROCESS = 99_999_999;

  @TempDir Path temp;

  /** An interrupted thread cannot take a lock; the folder made for it goes again. */
  @Test
  void aFolderThatCannotBeLockedIsRemoved() throws Exception {
    Thread.currentThread().interrupt();
    assertThrows(IOException.class, () -> WorkFolder.create(temp));
    assertTrue(Thread.interrupted());
    try (Stream<Path> left = Files.list(temp)) {
      assertEquals(0, left.count());
    }
  }

  @Test
  void isForItsOwnerOnly() throws Exception {
    Assumptions.assumeTrue(
        temp.getFileSystem().supportedFileAttributeViews().contains("posix"),
        "needs a file system with POSIX permissions");
    try (WorkFolder folder = WorkFolder.create(temp)) {
      assertEquals(
          "rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.path())));
    }
  }

  @Test
  void goesWithAllThatIsInIt() throws Exception {
    WorkFolder folder = WorkFolder.create(temp);
    Files.createDirectories(folder.path().resolve("a/b"));
    Files.writeString(folder.path().resolve("a/b/crash.log"), "#");
    folder.close();
    assertFalse(Files.exists(folder.path()));
  }

  @Test
  void onlyFoldersOfRunsThatNoLongerLiveAreRemoved() throws Exception {
    Path dead = leftBehind(NO_PROCESS);
    Path young = leftBehind(ProcessHandle.current().pid());
    Path reusedNumber = leftBehind(ProcessHandle.current().pid());
    Files.setLastModifiedTime(
        reusedNumber, FileTime.from(Instant.now().minus(Duration.ofMinutes(5))));
    Path foreign = Files.createDirectory(temp.resolve("rondure-work-notes"));
    Path target = Files.createDirectory(temp.resolve("precious"));
    Files.writeString(target.resolve("frame"), "light");
    Files.createSymbolicLink(dead.resolve("link"), target);
    try (WorkFolder living = WorkFolder.create(temp)) {
      Files.setLastModifiedTime(
          living.path(), FileTime.from(Instant.now().minus(Duration.ofMinutes(5))));
      WorkFolder.removeStale(temp);
      assertTrue(Files.exists(living.path()));
    }
    assertFalse(Files.exists(dead));
    assertFalse(Files.exists(reusedNumber));
    assertTrue(Files.exists(young));
    assertTrue(Files.exists(foreign));
    assertTrue(Files.exists(target.resolve("frame")));
  }

  @Test
  void theProgramHasOneOfItsOwn() throws Exception {
    Path folder = WorkFolder.ofProgram();
    assertEquals(folder, WorkFolder.ofProgram());
    assertTrue(Files.isDirectory(folder));
    WorkFolder.removeStale(folder.getParent());
    assertTrue(Files.isDirectory(folder));
  }

  private int count;

  private Path leftBehind(long pid) throws Exception {
    Path folder = Files.createDirectory(temp.resolve("rondure-work-" + pid + "-" + ++count));
    Files.writeString(folder.resolve("lock"), "");
    Files.writeString(folder.resolve("crash-1.log"), "#");
    return folder;
  }
}
