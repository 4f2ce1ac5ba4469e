package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import rondure.sim.OutputFormat;

/**
 * A night in a folder of its own, and the command over it that writes all that it can write: every
 * data file, sidecars in the results and beside the pictures, of which some are there already.
 */
final class Trial {
  static final int FRAMES = 6;

  /** What the command says of the sidecar that it cannot read. */
  static final String LEFT_ALONE = "frame5.xmp was left alone: it is no XML that can be read.";

  private static final String RATED =
      """
      <x:xmpmeta xmlns:x='adobe:ns:meta/'>
      <rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>
      <rdf:Description rdf:about='' xmlns:xmp='http://ns.adobe.com/xap/1.0/'
       xmlns:far='https://far.example/away#' xmp:Rating='3' far:plain='hut'/>
      </rdf:RDF></x:xmpmeta>
      """;

  private final Path home;
  private final Path folder;

  private Trial(Path home, Path folder) {
    this.home = home;
    this.folder = folder;
  }

  /**
   * @param home where the commands of all trials have their temporary folder
   */
  static Trial in(Path home, String name) throws IOException {
    Trial trial = new Trial(home, home.resolve(name));
    Path night = trial.night();
    for (int i = 1; i <= FRAMES; i++) {
      Path frame = night.resolve("frame" + i + ".tif");
      SmallNight.copy(OutputFormat.TIFF, 1 + i % SmallNight.FRAMES, frame);
      // What follows the picture in a TIFF file is not looked at.
      Files.write(frame, new byte[] {(byte) i}, StandardOpenOption.APPEND);
    }
    Files.writeString(night.resolve("frame2.xmp"), RATED);
    Files.writeString(night.resolve("frame4.tif.xmp"), RATED.replace("'3'", "'0'"));
    Files.writeString(night.resolve("frame5.xmp"), "no XML");
    return trial;
  }

  private Path night() {
    return folder.resolve("night");
  }

  Path out() {
    return folder.resolve("out");
  }

  /** Starts the command with one worker, or more where no order of events matters. */
  ChildRun start(String... javaOptions) throws IOException {
    ChildRun.Builder child = ChildRun.in(home);
    List.of(javaOptions).forEach(child::javaOption);
    return child.start(
        "report",
        "--workers",
        javaOptions.length == 0 ? 2 : 1,
        "--star-table",
        "--sidecars",
        "--sidecars-beside",
        "--out",
        out(),
        night());
  }

  /** Every file and folder by its name, with its bytes. */
  private Map<String, String> state() throws IOException {
    Map<String, String> state = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.toList()) {
        String bytes =
            Files.isDirectory(path)
                ? "a folder"
                : new String(Files.readAllBytes(path), StandardCharsets.ISO_8859_1);
        state.put(folder.relativize(path).toString(), bytes);
      }
    }
    return state;
  }

  /** Fails unless both left the same files, with the same bytes. */
  void assertSame(Trial expected) throws IOException {
    Map<String, String> there = state();
    Map<String, String> wanted = expected.state();
    assertEquals(wanted.keySet(), there.keySet());
    List<String> different =
        wanted.keySet().stream().filter(name -> !wanted.get(name).equals(there.get(name))).toList();
    assertEquals(List.of(), different, "files that differ");
  }
}
