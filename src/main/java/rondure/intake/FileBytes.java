package rondure.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import rondure.base.FrameProblem;

/** Random access to the bytes of one file; a read past the end is a {@link FrameProblem}. */
final class FileBytes implements AutoCloseable {
  private final Path path;
  private final FileChannel channel;
  private final long length;
  private final ReadingLimits limits;

  private FileBytes(Path path, FileChannel channel, ReadingLimits limits) throws IOException {
    this.path = path;
    this.limits = limits;
    this.channel = channel;
    this.length = channel.size();
  }

  /**
   * Opens a file, which must not be empty.
   *
   * @throws FrameProblem for a folder, a pipe or a device, and for a file that is empty or too long
   */
  static FileBytes open(Path path, ReadingLimits limits) throws IOException, FrameProblem {
    if (Files.isDirectory(path)) {
      throw new FrameProblem("this is a folder, not a picture");
    }
    if (Files.exists(path) && !Files.isRegularFile(path)) {
      throw new FrameProblem("this is no ordinary file; copy the picture into a file");
    }
    FileBytes file = new FileBytes(path, FileChannel.open(path, StandardOpenOption.READ), limits);
    try {
      file.checkLength();
      return file;
    } catch (FrameProblem refused) {
      file.close();
      throw refused;
    }
  }

  private void checkLength() throws FrameProblem {
    if (length == 0) {
      throw new FrameProblem("the file is empty (0 bytes); copy it again from the card");
    }
    if (length > limits.fileBytes()) {
      throw new FrameProblem(
          "the file has "
              + (length >> 20)
              + " MB; read are files of at most "
              + limits.fileMib()
              + " MB");
    }
  }

  ReadingLimits limits() {
    return limits;
  }

  Path path() {
    return path;
  }

  long length() {
    return length;
  }

  /** The {@code count} bytes at {@code offset}, as a big-endian buffer at position 0. */
  ByteBuffer read(long offset, int count) throws IOException, FrameProblem {
    if (offset < 0 || count < 0 || offset > length - count) {
      throw truncated(offset + count);
    }
    ByteBuffer bytes = ByteBuffer.allocate(count);
    fill(bytes, offset);
    return bytes;
  }

  /** A stream over {@code count} bytes from {@code offset} on, which must lie in the file. */
  InputStream slice(long offset, long count) throws FrameProblem {
    if (offset < 0 || count < 0 || count > length || offset > length - count) {
      throw truncated(offset + count);
    }
    return new Slice(channel, offset, count);
  }

  /** Fills {@code target} from its position to its limit, then rewinds it. */
  void fill(ByteBuffer target, long offset) throws IOException, FrameProblem {
    long at = offset;
    while (target.hasRemaining()) {
      int got = channel.read(target, at);
      if (got <= 0) {
        throw truncated(offset + target.limit());
      }
      at += got;
    }
    target.rewind();
  }

  /** The trouble that a file of this length should reach to byte {@code needed}. */
  FrameProblem truncated(long needed) {
    return new FrameProblem(
        "the file is cut short: its contents reach to byte "
            + needed
            + ", file holds "
            + length
            + "; copy it again from the card");
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }

  /** Part of the file in order, read ahead by large blocks. */
  private static final class Slice extends InputStream {
    private static final int BLOCK = 1 << 18;

    private final FileChannel channel;
    private final ByteBuffer block;
    private long at;
    private long left;

    Slice(FileChannel channel, long offset, long count) {
      this.channel = channel;
      this.at = offset;
      this.left = count;
      this.block = ByteBuffer.allocate((int) Math.min(BLOCK, Math.max(1, count))).limit(0);
    }

    @Override
    public int read() throws IOException {
      return more() ? block.get() & 0xFF : -1;
    }

    @Override
    public int read(byte[] target, int offset, int count) throws IOException {
      if (count == 0) {
        return 0;
      }
      if (!more()) {
        return -1;
      }
      int taken = Math.min(count, block.remaining());
      block.get(target, offset, taken);
      return taken;
    }

    @Override
    public long skip(long count) {
      long inBlock = Math.min(Math.max(0, count), block.remaining());
      block.position(block.position() + (int) inBlock);
      long beyond = Math.min(Math.max(0, count - inBlock), left);
      at += beyond;
      left -= beyond;
      return inBlock + beyond;
    }

    private boolean more() throws IOException {
      if (!block.hasRemaining() && left > 0) {
        block.clear().limit((int) Math.min(block.capacity(), left));
        int got = channel.read(block, at);
        block.flip();
        at += Math.max(0, got);
        left = got <= 0 ? 0 : left - got;
      }
      return block.hasRemaining();
    }
  }
}
