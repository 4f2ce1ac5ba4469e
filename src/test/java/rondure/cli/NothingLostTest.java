package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/**
 * Whatever happens to a run from outside, it says so, what was there before stays whole, and the
 * pictures stay as they were.
 */
class NothingLostTest {
  /** Mounts a small disk, fills it with earlier results, runs, and copies what is there then. */
  private static final String ON_A_SMALL_DISK =
      "mount -t tmpfs -o size=\"$1\"k tmpfs \"$2\" && cp -a \"$3\"/. \"$2\" && copy=$4 && small=$2"
          + " && shift 4 || exit 99; \"$@\"; code=$?; cp -a \"$small\" \"$copy\"; exit $code";

  private static final int ROOM_KB = 60;

  @TempDir Path home;

  private Path night(int frames) throws IOException {
    Path night = Files.createDirectories(home.resolve("night"));
    for (int i = 1; i <= frames; i++) {
      Path frame = night.resolve("frame" + i + ".tif");
      Files.write(frame, SmallNight.bytes(OutputFormat.TIFF, 1 + i % SmallNight.FRAMES));
      Files.write(frame, new byte[] {(byte) i}, StandardOpenOption.APPEND);
    }
    return night;
  }

  /** Each in a folder of its own, so that their words do not mix. */
  private ChildRun.Builder child(String name) throws IOException {
    return ChildRun.in(Files.createDirectories(home.resolve(name)));
  }

  private static Map<String, String> state(Path folder) throws IOException {
    Map<String, String> state = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String bytes = new String(Files.readAllBytes(file), "ISO-8859-1");
        state.put(folder.relativize(file).toString(), Files.getLastModifiedTime(file) + bytes);
      }
    }
    return state;
  }

  @Test
  void aSecondRunOnAnOutputFolderInUseIsRefusedAndTheFirstGoesOn() throws Exception {
    Path night = night(6);
    Path out = home.resolve("out");
    ChildRun first = child("first").start("report", "--workers", 1, "--out", out, night);
    first.await(() -> Files.exists(out.resolve(".rondure-lock")));
    Run second = Run.report(out, night);
    assertEquals(2, second.code(), second.toString());
    assertEquals(
        List.of(out + " is in use by another run; wait for it or name another folder with --out."),
        second.errLines());
    Run run = first.end();
    assertEquals(0, run.code(), run.toString());
    assertEquals(6, Run.frames(out).size());
  }

  /** What both write beside the pictures is written whole by one and found right by the other. */
  @Test
  @Tag("thorough")
  void twoRunsAtOnceOnOneNightLeaveTheSameSidecarsAsOne() throws Exception {
    Path night = night(6);
    Path alone = home.resolve("alone");
    assertEquals(0, Run.report(alone, "--sidecars", night).code());
    Map<String, String> pictures = state(night);
    Object[] command = {"report", "--workers", 1, "--sidecars-beside", "--out", "", night};
    command[5] = home.resolve("out1");
    ChildRun first = child("first").start(command);
    command[5] = home.resolve("out2");
    ChildRun second = child("second").start(command);
    for (ChildRun one : List.of(first, second)) {
      Run run = one.end();
      assertEquals(0, run.code(), run.toString());
      assertEquals(List.of(), run.errLines());
    }
    Outputs.assertSame(Outputs.of(home.resolve("out1")), home.resolve("out2"));
    List<String> sidecars = Run.names(alone.resolve("sidecars"));
    assertEquals(pictures.size() + sidecars.size(), Run.names(night).size());
    for (String name : sidecars) {
      Path beside = night.resolve(name);
      assertEquals(-1, Files.mismatch(alone.resolve("sidecars").resolve(name), beside), name);
    }
    assertTrue(state(night).entrySet().containsAll(pictures.entrySet()), "a picture changed");
  }

  /** As when the card is pulled: what was measured stays measured, the rest is listed. */
  @Test
  void aNightThatVanishesWhileItIsMeasuredIsReportedAsFarAsItWasRead() throws Exception {
    Path night = night(20);
    Path out = home.resolve("out");
    ChildRun child =
        child("child")
            .start(
                "report",
                "--workers",
                1,
                "--entries",
                "none",
                "--sidecars-beside",
                "--out",
                out,
                night);
    child.await(() -> Records.in(out) > 1);
    Files.move(night, home.resolve("pulled"));
    Run run = child.end();
    assertEquals(1, run.code(), run.toString());
    Map<String, Integer> reasons = new TreeMap<>();
    for (JsonNode frame : Run.frames(out).values()) {
      boolean measured = frame.get("status").asText().equals("measured");
      reasons.merge(measured ? "measured" : frame.get("reason").asText(), 1, Integer::sum);
    }
    assertEquals(
        List.of("measured", "the file is not there any more"), List.copyOf(reasons.keySet()));
    assertTrue(reasons.get("measured") > 1, reasons.toString());
    assertTrue(Files.size(out.resolve("report.pdf")) > 1000);
    assertTrue(Files.notExists(night), "something was made in its place");
    int kept = Records.in(out);
    Files.move(home.resolve("pulled"), night);
    Run again = Run.report(out, night);
    assertEquals(0, again.code(), again.err());
    assertTrue(
        again.out().contains("Of 20 frames, " + kept + " were measured before."), again.out());
  }

  /** Measurements of frames that only seem to be gone are worth keeping for the next run. */
  @Test
  @Tag("thorough")
  void measurementsOfAVanishedNightAreKept() throws Exception {
    Path night = night(3);
    Path out = home.resolve("out");
    assertEquals(0, Run.report(out, night).code());
    Path pulled = home.resolve("pulled.tif");
    ChildRun child = child("child").start("report", "--workers", 1, "--out", out, night);
    child.await(() -> Files.exists(out.resolve(".rondure-lock")));
    Files.move(night.resolve("frame2.tif"), pulled);
    int code = child.end().code();
    assertEquals(3, Records.in(out), "exit code " + code);
  }

  @Test
  void aFullDiskIsSaidAndEarlierResultsStayWhole() throws Exception {
    assumeTrue(
        works("unshare", "-rm", "mount", "-t", "tmpfs", "-o", "size=9k", "tmpfs", "/tmp"),
        "skipped: no unshare that may mount a small disk");
    Path earlier = home.resolve("earlier");
    assertEquals(0, Run.report(earlier, night(2)).code());
    long usedKb = 0;
    for (String file : state(earlier).keySet()) {
      usedKb += 4 + Files.size(earlier.resolve(file)) / 1024;
    }
    Path small = Files.createDirectory(home.resolve("small"));
    Path after = home.resolve("after");
    Run run =
        child("child")
            .through("unshare", "-rm", "sh", "-c", ON_A_SMALL_DISK, "sh")
            .through(Long.toString(usedKb + ROOM_KB), small.toString())
            .through(earlier.toString(), after.toString())
            .start("report", "--workers", 1, "--out", small, night(5))
            .end();
    assertEquals(3, run.code(), run.toString());
    assertEquals(
        List.of(
            "Measurements cannot be kept in "
                + small.resolve("measured")
                + " (No space left on device); the next run measures those frames again.",
            "No report could be made: No space left on device"),
        run.errLines());
    assertEquals(state(earlier), state(after));
  }

  /** Every system call of the command and its workers that names a picture, as strace sees them. */
  @Test
  @Tag("thorough")
  void noSystemCallButOpeningForReadingTouchesAPicture() throws Exception {
    Path night = night(3);
    for (OutputFormat format : OutputFormat.values()) {
      String name = "other." + format.extension();
      SmallNight.copy(format, 2, night.resolve(format.name()).resolve(name));
    }
    Path calls = home.resolve("calls");
    String[] traced = {"strace", "-f", "-qq", "-s", "400", "-e", "trace=%file", "-o"};
    assumeTrue(works("strace", "-f", "true"), "skipped: no strace");
    Map<String, String> before = state(night);
    Run run =
        child("child")
            .through(traced)
            .through(calls.toString())
            .start("report", "--sidecars", "--star-table", "--out", home.resolve("out"), night)
            .end(1800);
    assertEquals(0, run.code(), run.toString());
    assertEquals(before, state(night));
    Map<String, Integer> kinds = new TreeMap<>();
    for (String line : Files.readAllLines(calls)) {
      int at = line.indexOf(night + "/");
      if (at >= 0 && !line.contains("execve(")) {
        String call = line.replaceFirst("^\\d+ +", "").replaceFirst("\\(.*", "");
        boolean opens = call.startsWith("open");
        String flags = opens ? line.replaceFirst(".*\", (O_[A-Z_|]+).*", "$1") : "";
        kinds.merge(opens ? "open " + flags.replace("|O_CLOEXEC", "") : call, 1, Integer::sum);
      }
    }
    System.out.println(kinds);
    int reads = kinds.getOrDefault("open O_RDONLY", 0);
    assertTrue(reads >= 2 * before.size(), reads + " openings");
    List<String> harmless =
        List.of("open O_RDONLY", "open O_RDONLY|O_NONBLOCK|O_DIRECTORY", "stat", "lstat", "access");
    List<String> others =
        kinds.keySet().stream()
            .filter(kind -> !harmless.contains(kind))
            .filter(kind -> !List.of("newfstatat", "statx", "readlink").contains(kind))
            .toList();
    assertEquals(List.of(), others);
  }

  private static boolean works(String... command) throws InterruptedException {
    try {
      ProcessBuilder quiet = new ProcessBuilder(command).redirectErrorStream(true);
      return quiet.redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor() == 0;
    } catch (IOException absent) {
      return false;
    }
  }
}
