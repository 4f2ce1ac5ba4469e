package rondure.report.sidecar;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rondure.night.Grade;

/**
 * What a fuzzer calls: a sidecar of any bytes is merged or refused, and merging again is the same.
 */
public final class SidecarFuzz {
  private SidecarFuzz() {}

  /**
   * Writes the seeds.
   *
   * @param args the folder
   */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0], "sidecar"));
    Files.writeString(folder.resolve("rated"), Packets.rated("3"));
    Files.writeString(folder.resolve("rich"), Packets.rich());
    Files.writeString(folder.resolve("bare"), Packets.of("", ""));
  }

  /** Called by the fuzzer. */
  public static void fuzzerTestOneInput(byte[] data) {
    String text = new String(data, StandardCharsets.UTF_8);
    Optional<FrameMarks> marks = Optional.of(new FrameMarks(4, List.of(Keywords.of(Grade.KEEP))));
    try {
      Merged once = XmpMerge.merge(Optional.of(text), marks, true);
      Merged twice = XmpMerge.merge(Optional.of(once.text()), marks, true);
      if (!once.text().equals(twice.text())) {
        throw new IllegalStateException("merging twice is not the same");
      }
    } catch (SidecarProblem refused) {
      if (refused.getMessage().isBlank()) {
        throw new IllegalStateException("a refusal without a reason", refused);
      }
    }
  }
}
