package rondure.crew;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The head of the file that a Java virtual machine writes when it dies of a fatal error.
 *
 * @param outOfMemory the system had no memory left for it
 * @param library the native library in which it happened, without its path
 */
record CrashLog(boolean outOfMemory, Optional<String> library) {
  private static final int HEAD_BYTES = 16_384;
  private static final Pattern FRAME =
      Pattern.compile("(?m)^# Problematic frame:\\R# C +\\[([\\w.\\-]+)\\+");

  /** The log at this path, empty when there is none. */
  static Optional<CrashLog> read(Path path) {
    try (InputStream in = Files.newInputStream(path)) {
      return Optional.of(parse(new String(in.readNBytes(HEAD_BYTES), StandardCharsets.UTF_8)));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  static CrashLog parse(String head) {
    Matcher frame = FRAME.matcher(head);
    return new CrashLog(
        head.contains("insufficient memory for the Java Runtime"),
        frame.find() ? Optional.of(frame.group(1)) : Optional.empty());
  }
}
