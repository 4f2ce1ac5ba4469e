package rondure.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.ZipException;

/** Bytes unpacked from the LZW of TIFF 6.0, section 13 (high bit first, early change of width). */
final class LzwStream extends InputStream {
  private static final int CLEAR = 256;
  private static final int END = 257;
  private static final int MOST_CODES = 4096;

  private final InputStream in;
  private final int[] prefix = new int[MOST_CODES];
  private final byte[] last = new byte[MOST_CODES];
  private final byte[] first = new byte[MOST_CODES];
  private final int[] length = new int[MOST_CODES];
  private final byte[] ready = new byte[MOST_CODES + 1];
  private int readyAt;
  private int readyEnd;
  private int next = END + 1;
  private int width = 9;
  private int previous = -1;
  private int bits;
  private int bitCount;
  private boolean ended;

  LzwStream(InputStream in) {
    this.in = in;
    for (int i = 0; i < CLEAR; i++) {
      last[i] = (byte) i;
      first[i] = (byte) i;
      length[i] = 1;
    }
  }

  @Override
  public int read() throws IOException {
    return more() ? ready[readyAt++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] target, int offset, int count) throws IOException {
    int done = 0;
    while (done < count && more()) {
      int taken = Math.min(count - done, readyEnd - readyAt);
      System.arraycopy(ready, readyAt, target, offset + done, taken);
      readyAt += taken;
      done += taken;
    }
    return done == 0 && count > 0 ? -1 : done;
  }

  private boolean more() throws IOException {
    while (readyAt == readyEnd && !ended) {
      step();
    }
    return readyAt < readyEnd;
  }

  private void step() throws IOException {
    int code = code();
    if (code == CLEAR) {
      next = END + 1;
      width = 9;
      previous = -1;
    } else if (code == END || code < 0) {
      ended = true;
    } else {
      unpack(code);
      previous = code;
    }
  }

  private void unpack(int code) throws IOException {
    if (code > next || code >= MOST_CODES || previous < 0 && code > END) {
      throw new ZipException("LZW code " + code + " is out of order");
    }
    if (previous >= 0 && next < MOST_CODES) {
      prefix[next] = previous;
      first[next] = first[previous];
      last[next] = first[code == next ? previous : code];
      length[next] = length[previous] + 1;
      next++;
      if (next == (1 << width) - 1 && width < 12) {
        width++;
      }
    } else if (code >= next) {
      throw new ZipException("LZW code " + code + " is out of order");
    }
    readyAt = 0;
    readyEnd = length[code];
    int link = code;
    for (int i = readyEnd - 1; i >= 0; i--) {
      ready[i] = last[link];
      link = prefix[link];
    }
  }

  /** The next code, or -1 at the end of the data. */
  private int code() throws IOException {
    while (bitCount < width) {
      int value = in.read();
      if (value < 0) {
        return -1;
      }
      bits = bits << 8 | value;
      bitCount += 8;
    }
    bitCount -= width;
    return bits >> bitCount & (1 << width) - 1;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
