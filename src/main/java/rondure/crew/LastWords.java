package rondure.crew;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** Reads all that a worker writes to standard error and keeps the end of it. */
final class LastWords {
  private static final int KEPT_BYTES = 4096;

  private final byte[] ring = new byte[KEPT_BYTES];
  private long count;
  private final Thread reader;

  LastWords(InputStream stderr) {
    reader = new Thread(() -> drain(stderr), "worker-stderr");
    reader.setDaemon(true);
    reader.start();
  }

  private void drain(InputStream stderr) {
    byte[] chunk = new byte[KEPT_BYTES];
    try (stderr) {
      for (int n = stderr.read(chunk); n >= 0; n = stderr.read(chunk)) {
        keep(chunk, n);
      }
    } catch (IOException e) {
      // The worker is gone: there is nothing more to read.
    }
  }

  private synchronized void keep(byte[] chunk, int length) {
    for (int i = 0; i < length; i++) {
      ring[(int) (count++ % KEPT_BYTES)] = chunk[i];
    }
  }

  /** The last few kilobytes, once the worker has ended; waits a moment for the rest of them. */
  String text() {
    try {
      reader.join(500);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return kept();
  }

  private synchronized String kept() {
    int length = (int) Math.min(count, KEPT_BYTES);
    byte[] text = new byte[length];
    for (int i = 0; i < length; i++) {
      text[i] = ring[(int) ((count - length + i) % KEPT_BYTES)];
    }
    return new String(text, StandardCharsets.UTF_8).strip();
  }
}
