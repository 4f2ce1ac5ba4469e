package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import rondure.base.FrameProblem;

/**
 * Where a CR3 keeps its EXIF.
 *
 * <p>A CR3 is a chain of boxes (ISO/IEC 14496-12): length, four letters, content. Inside the box
 * "moov" a box "uuid" with a fixed number holds "CMT1" (main directory) and "CMT2" (Exif
 * directory), each a small TIFF of its own; "CMT3" holds maker notes and "CMT4" the position, which
 * are not looked at. Source: L. Clévy, "Describing the Canon Raw v3 (CR3) file format", 2018.
 */
final class CanonBoxes {
  private static final int MOST_BOXES = 200;
  private static final int HEADER = 8;
  private static final int LONG_HEADER = 16;
  private static final long UUID_HIGH = 0x85c0b687820f11e0L;
  private static final long UUID_LOW = 0x8111f4ce462b6a48L;

  /** Part of a file. */
  record Span(long start, long length) {
    long end() {
      return start + length;
    }
  }

  private record Box(String type, Span content) {}

  private CanonBoxes() {}

  /** The small TIFFs with the main and the Exif directory, in this order; none when absent. */
  static List<Span> metadata(FileBytes file) throws IOException, FrameProblem {
    List<Span> found = new ArrayList<>();
    for (Box movie : boxes(file, new Span(0, file.length()), "moov")) {
      for (Box own : boxes(file, movie.content(), "uuid")) {
        ByteBuffer uuid = file.read(own.content().start(), 16);
        if (uuid.getLong(0) == UUID_HIGH && uuid.getLong(8) == UUID_LOW) {
          Span inside = new Span(own.content().start() + 16, own.content().length() - 16);
          boxes(file, inside, "CMT1").forEach(box -> found.add(box.content()));
          boxes(file, inside, "CMT2").forEach(box -> found.add(box.content()));
        }
      }
    }
    return found;
  }

  private static List<Box> boxes(FileBytes file, Span within, String type)
      throws IOException, FrameProblem {
    List<Box> found = new ArrayList<>();
    long at = within.start();
    for (int i = 0; i < MOST_BOXES && at + HEADER <= within.end(); i++) {
      ByteBuffer head = file.read(at, (int) Math.min(LONG_HEADER, within.end() - at));
      long size = head.getInt(0) & 0xFFFFFFFFL;
      int header = HEADER;
      if (size == 1 && head.capacity() == LONG_HEADER) {
        size = head.getLong(8);
        header = LONG_HEADER;
      } else if (size == 0) {
        size = within.end() - at;
      }
      if (size < header || size > within.end() - at) {
        break;
      }
      String name = new String(head.array(), 4, 4, StandardCharsets.ISO_8859_1);
      if (name.equals(type)) {
        found.add(new Box(name, new Span(at + header, size - header)));
      }
      at += size;
    }
    return found;
  }
}
