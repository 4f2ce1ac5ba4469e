package rondure.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Facts from a FITS primary header: 80-character cards in blocks of 2880 bytes. */
final class FitsFacts {
  private static final int CARD = 80;
  private static final int HEADER_BYTES_MAX = 2880 * 64;

  private FitsFacts() {}

  static ShotFacts read(Path path) throws FrameProblem {
    Map<String, String> cards;
    try (InputStream in = Files.newInputStream(path)) {
      cards = cards(in.readNBytes(HEADER_BYTES_MAX));
    } catch (IOException e) {
      throw new FrameProblem("the file cannot be read; copy it again from the card", e);
    }
    return new ShotFacts(
        ImageFormat.FITS,
        number(cards, "NAXIS1").map(Double::intValue).orElse(0),
        number(cards, "NAXIS2").map(Double::intValue).orElse(0),
        Orientation.NORMAL,
        time(cards),
        fact(cards, "EXPTIME").or(() -> fact(cards, "EXPOSURE")),
        Optional.empty(),
        Optional.empty(),
        fact(cards, "FOCALLEN"),
        Optional.empty(),
        fact(cards, "XPIXSZ"),
        number(cards, "AMBTEMP").map(value -> new Fact<>(value, Fact.Source.FILE)),
        Optional.ofNullable(cards.get("INSTRUME")).map(ExifFacts::clean),
        Optional.empty(),
        false);
  }

  private static Map<String, String> cards(byte[] header) {
    Map<String, String> cards = new HashMap<>();
    for (int at = 0; at + CARD <= header.length; at += CARD) {
      String card = new String(header, at, CARD, StandardCharsets.US_ASCII);
      if (card.startsWith("END ")) {
        break;
      }
      if (card.startsWith("= ", 8)) {
        cards.put(card.substring(0, 8).trim(), value(card.substring(10)));
      }
    }
    return cards;
  }

  private static String value(String text) {
    String trimmed = text.trim();
    if (trimmed.startsWith("'")) {
      int end = trimmed.indexOf('\'', 1);
      return end > 0 ? trimmed.substring(1, end).trim() : trimmed.substring(1);
    }
    int slash = trimmed.indexOf('/');
    return (slash < 0 ? trimmed : trimmed.substring(0, slash)).trim();
  }

  private static Optional<Double> number(Map<String, String> cards, String key) {
    try {
      return Optional.ofNullable(cards.get(key)).map(Double::valueOf).filter(Double::isFinite);
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static Optional<Fact<Double>> fact(Map<String, String> cards, String key) {
    return number(cards, key).filter(v -> v > 0).map(v -> new Fact<>(v, Fact.Source.FILE));
  }

  private static Optional<CaptureTime> time(Map<String, String> cards) {
    String text = cards.getOrDefault("DATE-OBS", "");
    try {
      LocalDateTime local = LocalDateTime.parse(text);
      boolean fraction = text.contains(".");
      return Optional.of(new CaptureTime(local, OptionalInt.of(0), fraction, Fact.Source.FILE));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
