package rondure.intake;

import java.io.IOException;
import java.io.InputStream;

/** Bytes unpacked from the PackBits runs of TIFF 6.0, section 9. */
final class PackBitsStream extends InputStream {
  private final InputStream in;
  private int left;
  private int repeated = -1;

  PackBitsStream(InputStream in) {
    this.in = in;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) == 1 ? one[0] & 0xFF : -1;
  }

  @Override
  public int read(byte[] target, int offset, int count) throws IOException {
    int done = 0;
    while (done < count && (left > 0 || startRun())) {
      int taken = Math.min(count - done, left);
      if (repeated >= 0) {
        java.util.Arrays.fill(target, offset + done, offset + done + taken, (byte) repeated);
      } else {
        taken = in.read(target, offset + done, taken);
        if (taken <= 0) {
          break;
        }
      }
      left -= taken;
      done += taken;
    }
    return done == 0 && count > 0 ? -1 : done;
  }

  /** Reads the head of the next run; false at the end of the data. */
  private boolean startRun() throws IOException {
    int head = in.read();
    while (head == 128) {
      head = in.read();
    }
    if (head < 0) {
      return false;
    }
    left = head < 128 ? head + 1 : 257 - head;
    repeated = head < 128 ? -1 : in.read();
    return head < 128 || repeated >= 0;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
