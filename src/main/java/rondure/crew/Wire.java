package rondure.crew;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.zip.CRC32;

/**
 * Messages on a pipe: magic, length and CRC-32 of the payload (big-endian, 4 bytes each), then the
 * payload. Bytes that anything else wrote to the pipe are noticed by magic, length or checksum.
 */
final class Wire {
  /** Longest payload, bytes: a hundred times a usual measurement. */
  static final int LENGTH_MAX = 64 << 20;

  private static final int MAGIC = 0x526E_64C5;

  /** First byte of every line of the short crash report on standard output. */
  private static final int CRASH_REPORT_MARK = '#';

  /** The pipe carries something that is not a message. */
  static final class Garbled extends IOException {
    private static final long serialVersionUID = 1L;

    private final boolean crashReport;

    Garbled(String message) {
      this(message, false);
    }

    private Garbled(String message, boolean crashReport) {
      super(message);
      this.crashReport = crashReport;
    }

    /** True when the bytes look like the report with which a Java virtual machine dies. */
    boolean isCrashReport() {
      return crashReport;
    }
  }

  private Wire() {}

  static void write(OutputStream pipe, byte[] payload) throws IOException {
    if (payload.length > LENGTH_MAX) {
      throw new IOException("a message of " + payload.length + " bytes is too long");
    }
    DataOutputStream out = new DataOutputStream(pipe);
    out.writeInt(MAGIC);
    out.writeInt(payload.length);
    out.writeInt(checksum(payload));
    out.write(payload);
    out.flush();
  }

  /**
   * The next payload.
   *
   * @throws EOFException when the pipe ended, between messages or within one
   * @throws Garbled when the bytes are not a message
   */
  static byte[] read(InputStream pipe) throws IOException {
    DataInputStream in = new DataInputStream(pipe);
    int magic = in.readInt();
    if (magic != MAGIC) {
      throw new Garbled(
          String.format("message starts with %08x", magic), magic >>> 24 == CRASH_REPORT_MARK);
    }
    int length = in.readInt();
    if (length < 0 || length > LENGTH_MAX) {
      throw new Garbled("message length " + length);
    }
    int expected = in.readInt();
    byte[] payload = in.readNBytes(length);
    if (payload.length < length) {
      throw new EOFException("message ended after " + payload.length + " of " + length + " bytes");
    }
    if (checksum(payload) != expected) {
      throw new Garbled("message checksum is wrong");
    }
    return payload;
  }

  private static int checksum(byte[] payload) {
    CRC32 crc = new CRC32();
    crc.update(payload);
    return (int) crc.getValue();
  }
}
