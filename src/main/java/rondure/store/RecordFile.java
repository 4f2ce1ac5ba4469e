package rondure.store;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Objects;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;
import rondure.crew.RecordJson;

/**
 * A record as bytes: magic (8), format version (4, big-endian), key (32), SHA-256 of all other
 * bytes (32), then the frame as deflated JSON. Whatever is not exactly that is refused, and no more
 * memory is taken than {@link #JSON_BYTES_MAX} asks for.
 */
final class RecordFile {
  /** Longest file that is read or written: thirty times a usual one. */
  static final int PACKED_BYTES_MAX = 4 << 20;

  /** Longest JSON inside: fifty times a usual one. */
  static final int JSON_BYTES_MAX = 16 << 20;

  /** First bytes of every record. */
  static final String MAGIC = "RNDFRAME";

  private static final int VERSION = 1;
  private static final int HEAD_BYTES = MAGIC.length() + Integer.BYTES + Sha256.BYTES;
  private static final int BLOCK_BYTES = 1 << 16;

  /** Bytes that are no sound record of the key that was asked for. */
  static final class Doubtful extends IOException {
    private static final long serialVersionUID = 1L;

    Doubtful(String message) {
      super(message);
    }

    Doubtful(String message, Throwable cause) {
      super(message, cause);
    }
  }

  private RecordFile() {}

  /**
   * The record of a frame; equal frames give equal bytes.
   *
   * @param key 64 hexadecimal digits
   * @throws IOException when it would be longer than what is read back
   */
  static byte[] pack(String key, KeptFrame frame) throws IOException {
    byte[] json = RecordJson.write(frame);
    byte[] packed = deflated(json);
    int length = HEAD_BYTES + Sha256.BYTES + packed.length;
    if (json.length > JSON_BYTES_MAX || length > PACKED_BYTES_MAX) {
      throw new IOException("a measurement of " + json.length + " bytes is too long to be kept");
    }
    byte[] head = head(key, VERSION);
    return ByteBuffer.allocate(length).put(head).put(checksum(head, packed)).put(packed).array();
  }

  /**
   * The frame of a record.
   *
   * @throws Doubtful when the bytes are not such a record, not of this key, or damaged
   */
  static KeptFrame unpack(String key, byte[] record) throws Doubtful {
    byte[] head = head(key, VERSION);
    if (record.length < HEAD_BYTES + Sha256.BYTES || record.length > PACKED_BYTES_MAX) {
      throw new Doubtful("a record of " + record.length + " bytes");
    }
    if (!Arrays.equals(record, 0, HEAD_BYTES, head, 0, HEAD_BYTES)) {
      throw new Doubtful("another kind, version or frame");
    }
    byte[] packed = Arrays.copyOfRange(record, HEAD_BYTES + Sha256.BYTES, record.length);
    byte[] told = Arrays.copyOfRange(record, HEAD_BYTES, HEAD_BYTES + Sha256.BYTES);
    if (!Arrays.equals(told, checksum(head, packed))) {
      throw new Doubtful("its checksum is wrong");
    }
    return read(inflated(packed));
  }

  private static KeptFrame read(byte[] json) throws Doubtful {
    try {
      return Objects.requireNonNull(RecordJson.read(json, KeptFrame.class), "no frame");
    } catch (IOException | RuntimeException nonsense) {
      throw new Doubtful("no measurement", nonsense);
    }
  }

  private static byte[] head(String key, int version) {
    return ByteBuffer.allocate(HEAD_BYTES)
        .put(MAGIC.getBytes(StandardCharsets.US_ASCII))
        .putInt(version)
        .put(HexFormat.of().parseHex(key))
        .array();
  }

  private static byte[] checksum(byte[] head, byte[] packed) {
    var digest = Sha256.digest();
    digest.update(head);
    return digest.digest(packed);
  }

  private static byte[] deflated(byte[] json) {
    Deflater deflater = new Deflater(Deflater.BEST_SPEED);
    try {
      deflater.setInput(json);
      deflater.finish();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] block = new byte[BLOCK_BYTES];
      while (!deflater.finished()) {
        out.write(block, 0, deflater.deflate(block));
      }
      return out.toByteArray();
    } finally {
      deflater.end();
    }
  }

  /** The whole of a deflated stream and nothing behind it, up to the bound. */
  private static byte[] inflated(byte[] packed) throws Doubtful {
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(packed);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] block = new byte[BLOCK_BYTES];
      while (!inflater.finished()) {
        int got = inflater.inflate(block);
        if (got == 0 && !inflater.finished() || out.size() + got > JSON_BYTES_MAX) {
          throw new Doubtful("it ends too early or never");
        }
        out.write(block, 0, got);
      }
      if (inflater.getRemaining() > 0) {
        throw new Doubtful("something lies behind it");
      }
      return out.toByteArray();
    } catch (DataFormatException damaged) {
      throw new Doubtful("not deflated", damaged);
    } finally {
      inflater.end();
    }
  }
}
