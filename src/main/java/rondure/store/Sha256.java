package rondure.store;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of bytes in memory. */
final class Sha256 {
  static final int BYTES = 32;

  private Sha256() {}

  static byte[] of(byte[] bytes) {
    return digest().digest(bytes);
  }

  static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(of(bytes));
  }

  /** An empty digest to be filled bit by bit. */
  static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
