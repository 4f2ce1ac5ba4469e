package rondure.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.stream.Stream;
import rondure.night.Grade;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/**
 * Writes keep.txt: paths relative to the input, one a line, UTF-8; copies follow their frame. A
 * name with a line end has no place in such a list.
 */
public final class KeepList {
  private KeepList() {}

  /** Writes the list; leaves the stream open. */
  public static void write(NightBook book, OutputStream out) throws IOException {
    StringBuilder text = new StringBuilder();
    book.frames().stream()
        .filter(KeepList::isKept)
        .flatMap(KeepList::names)
        .filter(name -> !breaksLines(name))
        .forEach(name -> text.append(name).append('\n'));
    out.write(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** True for a kept frame with a name that the list cannot hold. */
  static boolean cannotBeListed(NightFrame frame) {
    return isKept(frame) && names(frame).anyMatch(KeepList::breaksLines);
  }

  private static boolean isKept(NightFrame frame) {
    return frame.grade().equals(Optional.of(Grade.KEEP));
  }

  private static Stream<String> names(NightFrame frame) {
    return Stream.concat(Stream.of(frame.file()), frame.copies().stream());
  }

  private static boolean breaksLines(String name) {
    return name.contains("\n") || name.contains("\r");
  }
}
