package rondure.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rondure.base.PlainText;
import rondure.night.FrameShape;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/**
 * Writes run.log: a line for each frame and each remark, UTF-8. It tells of the night only; the
 * same pictures give the same bytes however the run went.
 */
public final class RunLog {
  private RunLog() {}

  /**
   * Writes the log; leaves the stream open.
   *
   * @param sidecars sentences about sidecars, or properties in them, that were left alone
   */
  public static void write(
      NightBook book, String toolVersion, List<String> sidecars, OutputStream out)
      throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("Rondure " + toolVersion + ", " + book.inputName());
    book.frames().forEach(frame -> lines.add(line(frame)));
    book.notes().forEach(note -> lines.add("Remark: " + note));
    long unlisted = book.frames().stream().filter(KeepList::cannotBeListed).count();
    if (unlisted > 0) {
      lines.add(
          "Remark: "
              + unlisted
              + " kept frames are not in keep.txt, because their names hold a line end.");
    }
    sidecars.forEach(sentence -> lines.add("Sidecar: " + sentence));
    StringBuilder text = new StringBuilder();
    lines.forEach(line -> text.append(PlainText.inert(line)).append('\n'));
    out.write(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static String line(NightFrame frame) {
    List<String> parts = new ArrayList<>();
    parts.add(FrameFields.spelled(frame.status()));
    frame.shape().ifPresent(shape -> addShape(parts, shape));
    frame.grade().ifPresent(grade -> parts.add("grade " + FrameFields.spelled(grade)));
    FrameFields.cause(frame)
        .ifPresent(
            cause ->
                parts.add(
                    String.format(
                        Locale.ROOT,
                        "cause %s (confidence %.2f)",
                        cause,
                        FrameFields.confidence(frame).orElse(0.0))));
    frame.reason().ifPresent(parts::add);
    return frame.file() + ": " + String.join(", ", parts);
  }

  private static void addShape(List<String> parts, FrameShape shape) {
    parts.add(String.format(Locale.ROOT, "FWHM %.2f px", shape.fwhmPx()));
    parts.add(String.format(Locale.ROOT, "roundness %.2f", shape.roundness()));
    parts.add(shape.starCount() + " stars");
  }
}
