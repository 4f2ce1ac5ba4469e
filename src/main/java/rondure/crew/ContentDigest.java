package rondure.crew;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import rondure.base.FrameProblem;

/** Which bytes a file holds: SHA-256 of all of them, 64 lower-case hexadecimal digits. */
final class ContentDigest {
  /** Larger files are not digested: a frame of 200 megapixels and 16 bits is smaller. */
  private static final long BYTES_MAX = 1L << 30;

  private static final int BLOCK_BYTES = 1 << 17;

  private ContentDigest() {}

  /** The digest; empty when the file cannot be read or is too large. */
  static Optional<String> of(Path file) {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      return channel.size() > BYTES_MAX ? Optional.empty() : Optional.of(ofAll(channel));
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  /**
   * The digest.
   *
   * @throws FrameProblem when there is none
   */
  static String required(Path file) throws FrameProblem {
    return of(file).orElseThrow(() -> new FrameProblem("the file cannot be read or is too large"));
  }

  private static String ofAll(FileChannel channel) throws IOException {
    MessageDigest digest = sha256();
    ByteBuffer block = ByteBuffer.allocate(BLOCK_BYTES);
    long left = BYTES_MAX;
    for (int got = channel.read(block); got >= 0; got = channel.read(block)) {
      left -= got;
      if (left < 0) {
        throw new IOException("the file grows");
      }
      digest.update(block.flip());
      block.clear();
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
