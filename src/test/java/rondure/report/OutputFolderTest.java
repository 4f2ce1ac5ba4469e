package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {
  @TempDir Path home;

  @Test
  void filesAppearTogetherWhenPublished() throws Exception {
    Path night = Files.createDirectory(home.resolve("night"));
    try (OutputFolder folder = OutputFolder.beside(night, home)) {
      folder.write("a.txt", out -> out.write('a'));
      assertFalse(Files.exists(folder.path().resolve("a.txt")));
      folder.publish();
      assertEquals("a", Files.readString(folder.path().resolve("a.txt")));
    }
    assertEquals(
        Stream.of(".rondure-output", "a.txt").toList(), names(home.resolve("night-rondure")));
  }

  @Test
  void aFailedRunLeavesNothingBehind() throws Exception {
    Path night = Files.createDirectory(home.resolve("night"));
    try (OutputFolder folder = OutputFolder.beside(night, home)) {
      assertThrows(
          IOException.class,
          () ->
              folder.write(
                  "a.txt",
                  out -> {
                    throw new IOException("disk full");
                  }));
    }
    assertFalse(Files.exists(home.resolve("night-rondure")));
  }

  @Test
  void anEmptyFolderIsEmptyAgainAfterAFailedRun() throws Exception {
    Path out = Files.createDirectory(home.resolve("out"));
    try (OutputFolder folder = OutputFolder.named(out)) {
      folder.write("a.txt", stream -> stream.write('1'));
    }
    assertEquals(java.util.List.of(), names(out));
  }

  /** A run takes hours: time enough to put something beside its results. */
  @Test
  void whatOthersPutIntoAFolderDuringAFailedRunStays() throws Exception {
    Path out = home.resolve("a/out");
    try (OutputFolder folder = OutputFolder.named(out)) {
      folder.write("a.txt", stream -> stream.write('1'));
      Files.writeString(out.resolve("letter.txt"), "mine");
    }
    assertEquals(Stream.of("letter.txt").toList(), names(out));
  }

  @Test
  void aFolderThatCouldNotBeFilledWholeHoldsNone() throws Exception {
    Path out = home.resolve("out");
    try (OutputFolder folder = OutputFolder.named(out)) {
      folder.write("a.txt", stream -> stream.write('1'));
      folder.write("b.txt", stream -> stream.write('2'));
      Files.delete(out.resolve(".rondure-partial/b.txt"));
      assertThrows(IOException.class, folder::publish);
    }
    assertFalse(Files.exists(out));
  }

  @Test
  void aFailedRunKeepsTheResultsOfTheRunBefore() throws Exception {
    Path out = home.resolve("out");
    try (OutputFolder folder = OutputFolder.named(out)) {
      folder.write("a.txt", stream -> stream.write('1'));
      folder.publish();
    }
    try (OutputFolder folder = OutputFolder.named(out)) {
      folder.write("a.txt", stream -> stream.write('2'));
    }
    assertEquals("1", Files.readString(out.resolve("a.txt")));
  }

  @Test
  void ourOwnFolderIsUsedAgain() throws Exception {
    Path night = Files.createDirectory(home.resolve("night"));
    OutputFolder.beside(night, home).close();
    try (OutputFolder folder = OutputFolder.beside(night, home)) {
      assertEquals(home.resolve("night-rondure").toRealPath(), folder.path().toRealPath());
    }
  }

  @Test
  void aForeignFolderOfThatNameIsLeftAlone() throws Exception {
    Path night = Files.createDirectory(home.resolve("night"));
    Path foreign = Files.createDirectory(home.resolve("night-rondure"));
    Files.writeString(foreign.resolve("letter.txt"), "mine");
    try (OutputFolder folder = OutputFolder.beside(night, home)) {
      assertEquals("night-rondure-2", folder.path().getFileName().toString());
    }
    assertEquals(Stream.of("letter.txt").toList(), names(foreign));
  }

  @Test
  void aNamedFolderWithForeignFilesIsRefused() throws Exception {
    Path foreign = Files.createDirectory(home.resolve("out"));
    Files.writeString(foreign.resolve("letter.txt"), "mine");
    OutputProblem problem = assertThrows(OutputProblem.class, () -> OutputFolder.named(foreign));
    assertTrue(problem.getMessage().contains("did not write"), problem.getMessage());
    assertEquals(Stream.of("letter.txt").toList(), names(foreign));
  }

  @Test
  void aFileInPlaceOfTheFolderIsRefused() throws Exception {
    Path file = Files.writeString(home.resolve("out"), "mine");
    assertThrows(OutputProblem.class, () -> OutputFolder.named(file));
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void twoRunsDoNotShareAFolder() throws Exception {
    try (OutputFolder first = OutputFolder.named(home.resolve("out"))) {
      OutputProblem problem =
          assertThrows(OutputProblem.class, () -> OutputFolder.named(first.path()));
      assertTrue(problem.getMessage().contains("in use"), problem.getMessage());
    }
  }

  /** As when the program is asked to end while the report is being laid out. */
  @Test
  void aFolderClosedWhileItIsWrittenTakesNothingMore() throws Exception {
    OutputFolder folder = OutputFolder.named(home.resolve("a/b/out"));
    folder.write("a.txt", out -> out.write('a'));
    assertThrows(
        InterruptedIOException.class,
        () ->
            folder.write(
                "b.txt",
                out -> {
                  out.write('b');
                  folder.close();
                }));
    assertThrows(InterruptedIOException.class, () -> folder.write("c.txt", out -> out.write('c')));
    assertThrows(InterruptedIOException.class, folder::publish);
    assertFalse(Files.exists(home.resolve("a")), "nor the folders above that were made for it");
  }

  /** Our own files are replaced; one that somebody changed or put there is kept under a name. */
  @Test
  void nothingThatWeDidNotWriteIsOverwritten() throws Exception {
    Path out = home.resolve("out");
    publish(out, "one");
    publish(out, "two");
    assertEquals(java.util.List.of(".rondure-output", "a.txt", "b.txt", "side"), names(out));
    Files.writeString(out.resolve("a.txt"), "mine");
    Files.delete(out.resolve("b.txt"));
    Files.createDirectory(out.resolve("b.txt"));
    Files.writeString(out.resolve("side/notes.txt"), "mine too");
    java.util.List<String> told = publish(out, "three");
    assertEquals(
        java.util.List.of(
            "a.txt was not as Rondure wrote it, so it was kept as a-yours.txt.",
            "b.txt was not as Rondure wrote it, so it was kept as b-yours.txt."),
        told);
    assertEquals("mine", Files.readString(out.resolve("a-yours.txt")));
    assertEquals("three", Files.readString(out.resolve("a.txt")));
    assertTrue(Files.isDirectory(out.resolve("b-yours.txt")));
    assertEquals(java.util.List.of("notes.txt", "three\n%.xmp"), names(out.resolve("side")));
    Files.writeString(out.resolve("a.txt"), "mine again");
    assertEquals(1, publish(out, "three").size());
    assertEquals("mine again", Files.readString(out.resolve("a-yours-2.txt")));
    assertEquals(java.util.List.of(), publish(out, "three"));
  }

  private static java.util.List<String> publish(Path out, String text) throws Exception {
    try (OutputFolder folder = OutputFolder.named(out)) {
      for (String name : new String[] {"a.txt", "b.txt", "side/" + text + "\n%.xmp"}) {
        folder.write(name, stream -> stream.write(text.getBytes()));
      }
      folder.renew("side");
      folder.publish();
      return folder.movedAside();
    }
  }

  /** The marker of earlier versions lists no files: all that have our names count as ours. */
  @Test
  void filesOfAnEarlierVersionAreReplaced() throws Exception {
    Path out = Files.createDirectory(home.resolve("out"));
    Files.writeString(out.resolve(OutputFolder.MARKER), "This folder holds results.\n");
    Files.writeString(out.resolve("a.txt"), "of an earlier version");
    assertEquals(java.util.List.of(), publish(out, "one"));
    assertEquals("one", Files.readString(out.resolve("a.txt")));
    Files.writeString(out.resolve("a.txt"), "mine");
    assertEquals(1, publish(out, "two").size());
  }

  @Test
  void leftoversOfAKilledRunAreCleared() throws Exception {
    Path out = Files.createDirectory(home.resolve("out"));
    Files.writeString(out.resolve(OutputFolder.MARKER), "");
    Path partial = Files.createDirectory(out.resolve(".rondure-partial"));
    Files.writeString(partial.resolve("report.pdf"), "half");
    try (OutputFolder folder = OutputFolder.named(out)) {
      assertFalse(Files.exists(folder.path().resolve(".rondure-partial")));
    }
  }

  private static java.util.List<String> names(Path folder) throws IOException {
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.map(entry -> entry.getFileName().toString()).sorted().toList();
    }
  }
}
