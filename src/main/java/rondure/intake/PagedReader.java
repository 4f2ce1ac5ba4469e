package rondure.intake;

import com.drew.lang.BufferBoundsException;
import com.drew.lang.RandomAccessReader;
import java.io.IOException;
import rondure.base.FrameProblem;

/**
 * Lets the metadata library look into part of a file without holding the file in memory. Refuses
 * large single reads, which only damaged counts ask for.
 */
final class PagedReader extends RandomAccessReader {
  private static final int PAGE_BYTES = 1 << 14;
  private static final int MOST_BYTES_AT_ONCE = 1 << 25;

  private final FileBytes file;
  private final long start;
  private final long length;
  private byte[] page = {};
  private long pageStart;

  /** The {@code length} bytes of {@code file} from {@code start} on, indexed from 0. */
  PagedReader(FileBytes file, long start, long length) {
    if (start < 0 || length < 0 || start > file.length() - length) {
      throw new IllegalArgumentException(
          "bytes " + start + " + " + length + " must lie in a file of " + file.length());
    }
    this.file = file;
    this.start = start;
    this.length = length;
  }

  @Override
  public int toUnshiftedOffset(int localOffset) {
    return localOffset;
  }

  @Override
  public long getLength() {
    return length;
  }

  @Override
  public byte getByte(int index) throws IOException {
    validateIndex(index, 1);
    if (index < pageStart || index >= pageStart + page.length) {
      pageStart = index - index % PAGE_BYTES;
      page = bytes(pageStart, (int) Math.min(PAGE_BYTES, length - pageStart));
    }
    return page[(int) (index - pageStart)];
  }

  @Override
  public byte[] getBytes(int index, int count) throws IOException {
    validateIndex(index, count);
    return bytes(index, count);
  }

  private byte[] bytes(long from, int count) throws IOException {
    try {
      return file.read(start + from, count).array();
    } catch (FrameProblem cut) {
      throw new IOException(cut.getMessage(), cut);
    }
  }

  @Override
  protected boolean isValidIndex(int index, int bytesRequested) {
    return index >= 0
        && bytesRequested >= 0
        && bytesRequested <= MOST_BYTES_AT_ONCE
        && (long) index + bytesRequested <= length;
  }

  @Override
  protected void validateIndex(int index, int bytesRequested) throws IOException {
    if (!isValidIndex(index, bytesRequested)) {
      throw new BufferBoundsException(index, bytesRequested, length);
    }
  }
}
