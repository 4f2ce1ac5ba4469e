package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/**
 * What may not be read or written. The administrator may do anything, so a test that runs as one
 * gives that right up for the command; where it cannot, these tests are skipped.
 */
class PermissionsTest {
  private static final String[] WITHOUT_RIGHTS = {
    "setpriv", "--bounding-set=-dac_override,-dac_read_search"
  };

  @TempDir Path home;
  private final List<Path> closed = new ArrayList<>();

  private void allow(String rights, Path path) throws IOException {
    assumeTrue(
        path.getFileSystem().supportedFileAttributeViews().contains("posix"),
        "skipped: this file system has no permissions");
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(rights));
    closed.add(path);
  }

  @AfterEach
  void open() throws IOException {
    for (Path path : closed) {
      Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwxrwxrwx"));
    }
  }

  private Run report(Object... arguments) throws IOException, InterruptedException {
    ChildRun.Builder child = ChildRun.in(home);
    if (mayReadAnything()) {
      child.through(WITHOUT_RIGHTS);
    }
    return child.start(arguments).end();
  }

  private boolean mayReadAnything() throws IOException, InterruptedException {
    Path secret = Files.writeString(home.resolve("secret"), "");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("---------"));
    boolean readable = Files.isReadable(secret);
    Files.delete(secret);
    if (readable) {
      assumeTrue(canGiveUpRights(), "skipped: this user may read anything, and setpriv is missing");
    }
    return readable;
  }

  private static boolean canGiveUpRights() throws InterruptedException {
    List<String> command = new ArrayList<>(List.of(WITHOUT_RIGHTS));
    command.add("true");
    try {
      ProcessBuilder quiet = new ProcessBuilder(command).redirectErrorStream(true);
      return quiet.redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void filesAndFoldersThatMayNotBeReadAreSaidAndTheNightGoesOn() throws Exception {
    Path night = SmallNight.tiffs(home.resolve("night"), 2);
    allow("---------", night.resolve("night_2.tif"));
    Path inner = Files.createDirectory(night.resolve("inner"));
    allow("---------", inner);
    Path out = home.resolve("out");
    Run run = report("report", "--workers", 1, "--entries", "none", "--out", out, night);
    assertEquals(1, run.code(), run.toString());
    assertEquals(
        List.of(
            "inner: this folder may not be read; change its permissions.",
            "night_2.tif: the file may not be read; change its permissions"),
        run.errLines());
    Map<String, JsonNode> frames = Run.frames(out);
    assertEquals("measured", frames.get("night_1.tif").get("status").asText());
    assertEquals("unreadable", frames.get("night_2.tif").get("status").asText());
  }

  /** Measurements that cannot be kept cost a sentence; those kept before are used. */
  @Test
  void measurementsThatMayNotBeKeptAreMadeAllTheSame() throws Exception {
    Path night = SmallNight.tiffs(home.resolve("night"), 1);
    Path out = home.resolve("out");
    assertEquals(0, Run.report(out, night).code());
    SmallNight.tiffs(home.resolve("more"), 2);
    Files.move(home.resolve("more/night_2.tif"), night.resolve("night_2.tif"));
    Path measured = out.resolve("measured");
    allow("r-xr-xr-x", measured);
    Run run = report("report", "--workers", 1, "--entries", "none", "--out", out, night);
    assertEquals(0, run.code(), run.toString());
    assertEquals(
        List.of(
            "Measurements cannot be kept in "
                + measured
                + " (permission denied); the next run measures those frames again."),
        run.errLines());
    assertTrue(run.out().contains("Of 2 frames, 1 was measured before."), run.out());
    assertEquals("measured", Run.frames(out).get("night_2.tif").get("status").asText());
    assertEquals(1, Records.in(out));
  }

  /** A card with its lock on: everything is read and nothing changes, to the times of files. */
  @Test
  void aNightThatMayOnlyBeReadIsMeasuredAndStaysAsItWas() throws Exception {
    Path night = SmallNight.tiffs(home.resolve("night"), 2);
    List<String> before = new ArrayList<>();
    for (String name : Run.names(night)) {
      allow("r--r--r--", night.resolve(name));
      before.add(name + " " + Files.getLastModifiedTime(night.resolve(name)));
    }
    allow("r-xr-xr-x", night);
    Path out = home.resolve("out");
    Run run = report("report", "--workers", 1, "--sidecars", "--out", out, night);
    assertEquals(0, run.code(), run.toString());
    assertEquals(List.of(), run.errLines());
    List<String> after = new ArrayList<>();
    for (String name : Run.names(night)) {
      int number = name.charAt("night_".length()) - '0';
      byte[] bytes = SmallNight.bytes(OutputFormat.TIFF, number);
      assertEquals(-1, Arrays.mismatch(bytes, Files.readAllBytes(night.resolve(name))));
      after.add(name + " " + Files.getLastModifiedTime(night.resolve(name)));
    }
    assertEquals(before, after);
    for (JsonNode frame : Run.frames(out).values()) {
      assertEquals("measured", frame.get("status").asText());
    }
  }

  @Test
  void aNightThatMayNotBeReadIsABadCommand() throws Exception {
    Path night = SmallNight.tiffs(home.resolve("night"), 1);
    allow("---------", night);
    Run run = report("report", night);
    assertEquals(2, run.code(), run.toString());
    assertEquals(List.of(night + " may not be read; change its permissions."), run.errLines());
    assertFalse(Files.exists(home.resolve("night-rondure")));
  }

  @Test
  void anOutputFolderThatMayNotBeWrittenIsABadCommand() throws Exception {
    Path night = SmallNight.tiffs(home.resolve("night"), 1);
    Path out = Files.createDirectory(home.resolve("out"));
    allow("r-xr-xr-x", out);
    Run run = report("report", "--out", out, night);
    assertEquals(2, run.code(), run.toString());
    assertEquals(
        List.of("Cannot write to " + out + " (permission denied); name another folder with --out."),
        run.errLines());
    assertEquals(List.of(), Run.names(out));
  }

  /** The current folder stands in for a place beside the input that may not be written. */
  @Test
  void resultsGoIntoTheCurrentFolderWhereThePlaceBesideTheInputMayNotBeWritten() throws Exception {
    Path card = home.resolve("card");
    SmallNight.tiffs(card.resolve("night"), 1);
    allow("r-xr-xr-x", card);
    Run run = report("report", "--workers", 1, "--entries", "none", card.resolve("night"));
    assertEquals(0, run.code(), run.toString());
    assertTrue(Files.exists(home.resolve("night-rondure/report.pdf")), run.out());
  }

  @Test
  void sidecarsOfAFolderThatMayNotBeWrittenCostOneSentence() throws Exception {
    Path night = SmallNight.tiffs(home.resolve("night"), 2);
    allow("r-xr-xr-x", night);
    Path out = home.resolve("out");
    Run run = report("report", "--workers", 1, "--out", out, "--sidecars-beside", night);
    assertEquals(0, run.code(), run.toString());
    assertEquals(2, Files.readAllLines(out.resolve("keep.txt")).size());
    assertEquals(
        List.of(
            "The folder of the pictures may not be written, so 2 sidecars are missing there;"
                + " --sidecars puts them into the results."),
        run.errLines());
    assertEquals(List.of("night_1.tif", "night_2.tif"), Run.names(night));
  }
}
