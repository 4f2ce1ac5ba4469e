package rondure.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import rondure.night.Grade;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/** Writes keep.txt: paths relative to the input, one a line, UTF-8; copies follow their frame. */
public final class KeepList {
  private KeepList() {}

  /** Writes the list; leaves the stream open. */
  public static void write(NightBook book, OutputStream out) throws IOException {
    StringBuilder text = new StringBuilder();
    for (NightFrame frame : book.frames()) {
      if (frame.grade().equals(Optional.of(Grade.KEEP))) {
        text.append(frame.file()).append('\n');
        frame.copies().forEach(copy -> text.append(copy).append('\n'));
      }
    }
    out.write(text.toString().getBytes(StandardCharsets.UTF_8));
  }
}
