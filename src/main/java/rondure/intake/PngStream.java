package rondure.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.stream.ImageInputStreamImpl;

/**
 * The chunks of a PNG that make its picture, for the Java library's reader: others are left out,
 * because that reader unpacks texts of any size even when told to ignore them.
 */
final class PngStream extends ImageInputStreamImpl {

  /**
   * A part of the file that is handed on.
   *
   * @param start where it begins in the file
   * @param length its bytes
   */
  record Part(long start, long length) {}

  private final FileImageInput file;
  private final List<Part> parts;
  private int part;
  private long partStart;

  /**
   * @param parts in order; closing leaves {@code file} open
   */
  PngStream(FileBytes file, List<Part> parts) {
    this.file = new FileImageInput(file);
    this.parts = List.copyOf(parts);
  }

  /** Adds a part, or lengthens the last one when it ends there. */
  static void add(List<Part> parts, long start, long length) {
    int last = parts.size() - 1;
    if (last >= 0 && parts.get(last).start() + parts.get(last).length() == start) {
      Part before = parts.remove(last);
      parts.add(new Part(before.start(), before.length() + length));
    } else {
      parts.add(new Part(start, length));
    }
  }

  /** A list that starts with the first {@code length} bytes of the file. */
  static List<Part> beginning(long length) {
    List<Part> parts = new ArrayList<>();
    parts.add(new Part(0, length));
    return parts;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] target, int offset, int count) throws IOException {
    checkClosed();
    bitOffset = 0;
    if (!find() || count == 0) {
      return count == 0 ? 0 : -1;
    }
    Part present = parts.get(part);
    long within = streamPos - partStart;
    file.seek(present.start() + within);
    int got = file.read(target, offset, (int) Math.min(count, present.length() - within));
    streamPos += Math.max(0, got);
    return got;
  }

  /** Goes to the part at the present position; false behind the last one. */
  private boolean find() {
    if (streamPos < partStart) {
      part = 0;
      partStart = 0;
    }
    while (part < parts.size() && streamPos >= partStart + parts.get(part).length()) {
      partStart += parts.get(part).length();
      part++;
    }
    return part < parts.size();
  }
}
