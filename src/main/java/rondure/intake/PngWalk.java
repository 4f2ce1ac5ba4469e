package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import rondure.base.FrameProblem;

/** Walks from chunk to chunk of a PNG: length, four letters, content, check sum (ISO/IEC 15948). */
final class PngWalk {
  private static final int FIRST_CHUNK = 8;

  /** Bytes of a chunk beside its content. */
  static final int AROUND = 12;

  private static final int HEAD = 8;

  private final FileBytes file;
  private final long most;
  private long count;
  private long at;
  private long next = FIRST_CHUNK;
  private long length;
  private String name = "";

  PngWalk(FileBytes file) {
    this.file = file;
    this.most = file.limits().chunks(file.length());
  }

  /**
   * Goes to the next chunk; false after the last one.
   *
   * @throws FrameProblem when the file is cut short or has more chunks than any picture
   */
  boolean next() throws IOException, FrameProblem {
    if (name.equals("IEND")) {
      return false;
    }
    if (++count > most) {
      throw new FrameProblem(
          "the PNG has more than "
              + most
              + " chunks, more than any picture of its length; export it again");
    }
    at = next;
    ByteBuffer head = file.read(at, HEAD);
    length = head.getInt() & 0xFFFFFFFFL;
    name = new String(head.array(), Integer.BYTES, Integer.BYTES, StandardCharsets.ISO_8859_1);
    next = at + AROUND + length;
    return true;
  }

  /** Where the chunk begins. */
  long at() {
    return at;
  }

  /** Bytes of its content. */
  long length() {
    return length;
  }

  String name() {
    return name;
  }

  /** The first {@code most} bytes of its content, or all when it has fewer. */
  ByteBuffer content(int most) throws IOException, FrameProblem {
    return file.read(at + HEAD, (int) Math.min(length, most));
  }
}
