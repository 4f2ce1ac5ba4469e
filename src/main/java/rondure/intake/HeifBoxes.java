package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import rondure.base.FrameProblem;

/**
 * Whether the boxes of a HEIF lie inside each other as they say (ISO/IEC 14496-12): the metadata
 * library takes memory for as much as they claim.
 */
final class HeifBoxes {
  private static final Set<String> CONTAINERS = Set.of("meta", "iprp", "ipco");
  private static final int HEADER = 8;
  private static final int LONG_HEADER = 16;
  private static final int MOST_BOXES = 10_000;

  private final FileBytes file;
  private int boxes;

  private HeifBoxes(FileBytes file) {
    this.file = file;
  }

  static boolean whole(FileBytes file) throws IOException, FrameProblem {
    return new HeifBoxes(file).whole(0, file.length());
  }

  private boolean whole(long start, long end) throws IOException, FrameProblem {
    long at = start;
    while (at + HEADER <= end) {
      ByteBuffer head = file.read(at, (int) Math.min(LONG_HEADER, end - at));
      long size = head.getInt(0) & 0xFFFFFFFFL;
      String type = new String(head.array(), Integer.BYTES, 4, StandardCharsets.ISO_8859_1);
      boolean large = size == 1 && head.capacity() == LONG_HEADER;
      size = large ? head.getLong(HEADER) : size == 0 && start == 0 ? end - at : size;
      int header = large ? LONG_HEADER : HEADER;
      if (size < header || size > end - at || ++boxes > MOST_BOXES) {
        return false;
      }
      // "meta" has four bytes of version and flags before its boxes.
      long inside = at + header + (type.equals("meta") ? Integer.BYTES : 0);
      if (CONTAINERS.contains(type) && !whole(inside, at + size)) {
        return false;
      }
      at += size;
    }
    return true;
  }
}
