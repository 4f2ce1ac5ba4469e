package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import javax.imageio.stream.ImageInputStreamImpl;
import rondure.base.FrameProblem;

/**
 * An opened file for the picture readers of the Java library. Theirs opens files by name, which
 * fails for names that the system's locale cannot spell.
 */
final class FileImageInput extends ImageInputStreamImpl {
  private final FileBytes file;

  /** Reads from the beginning; closing leaves {@code file} open. */
  FileImageInput(FileBytes file) {
    this.file = file;
  }

  @Override
  public long length() {
    return file.length();
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
    if (count == 0) {
      return 0;
    }
    int taken = (int) Math.min(count, file.length() - streamPos);
    if (taken <= 0) {
      return -1;
    }
    try {
      file.fill(ByteBuffer.wrap(target, offset, taken), streamPos);
    } catch (FrameProblem cut) {
      throw new IOException(cut.getMessage(), cut);
    }
    streamPos += taken;
    return taken;
  }
}
