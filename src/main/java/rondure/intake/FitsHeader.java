package rondure.intake;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import rondure.base.FrameProblem;

/** The keywords of one header of a FITS file (FITS Standard 4.0, section 4). */
final class FitsHeader {
  static final int BLOCK = 2880;

  private static final int CARD = 80;
  private static final int MOST_BLOCKS = 2000;

  private final Map<String, String> values;
  private final long dataOffset;

  private FitsHeader(Map<String, String> values, long dataOffset) {
    this.values = values;
    this.dataOffset = dataOffset;
  }

  /**
   * Reads the header that starts at {@code offset}.
   *
   * @throws FrameProblem when it has no END
   */
  static FitsHeader read(FileBytes file, long offset) throws IOException, FrameProblem {
    Map<String, String> values = new HashMap<>();
    for (int block = 0; block < MOST_BLOCKS; block++) {
      long at = offset + (long) block * BLOCK;
      String cards = new String(file.read(at, BLOCK).array(), StandardCharsets.ISO_8859_1);
      for (int i = 0; i < BLOCK; i += CARD) {
        String card = cards.substring(i, i + CARD);
        if (card.startsWith("END") && card.trim().equals("END")) {
          return new FitsHeader(values, at + BLOCK);
        }
        if (card.startsWith("= ", 8)) {
          values.putIfAbsent(card.substring(0, 8).trim(), value(card.substring(10)));
        }
      }
    }
    throw new FrameProblem("the FITS header has no end; the file is damaged");
  }

  private static String value(String field) {
    String text = field.trim();
    if (text.startsWith("'")) {
      return quoted(text).trim();
    }
    int comment = text.indexOf('/');
    return (comment < 0 ? text : text.substring(0, comment)).trim();
  }

  /** What stands between the quotation marks; a doubled one inside means one (section 4.2.1). */
  private static String quoted(String text) {
    StringBuilder inside = new StringBuilder();
    for (int i = 1; i < text.length(); i++) {
      if (text.charAt(i) == '\'' && !text.startsWith("''", i)) {
        break;
      }
      inside.append(text.charAt(i));
      i += text.startsWith("''", i) ? 1 : 0;
    }
    return inside.toString();
  }

  /** Where the data that belong to this header begin. */
  long dataOffset() {
    return dataOffset;
  }

  Optional<String> text(String keyword) {
    return words(keyword).map(text -> text.toUpperCase(Locale.ROOT));
  }

  /** The value of a keyword as it is written, without quotation marks. */
  Optional<String> words(String keyword) {
    return Optional.ofNullable(values.get(keyword));
  }

  OptionalDouble real(String keyword) {
    try {
      String value = values.getOrDefault(keyword, "").replace('D', 'E').replace('d', 'e');
      double number = Double.parseDouble(value);
      return Double.isFinite(number) ? OptionalDouble.of(number) : OptionalDouble.empty();
    } catch (NumberFormatException absent) {
      return OptionalDouble.empty();
    }
  }

  long whole(String keyword, long otherwise) {
    OptionalDouble number = real(keyword);
    return number.isPresent() ? (long) number.getAsDouble() : otherwise;
  }

  /** Bytes of the data after this header, without the padding to whole blocks. */
  long dataBytes() {
    long axes = whole("NAXIS", 0);
    long count = axes > 0 ? 1 : 0;
    for (int i = 1; i <= Math.min(axes, 9); i++) {
      count = saturated(count, whole("NAXIS" + i, 0));
    }
    long bytes = Math.abs(whole("BITPIX", 8)) / 8;
    return saturated(count + whole("PCOUNT", 0), bytes * Math.max(1, whole("GCOUNT", 1)));
  }

  private static long saturated(long a, long b) {
    try {
      return Math.max(0, Math.multiplyExact(a, b));
    } catch (ArithmeticException overflow) {
      return Long.MAX_VALUE / 4;
    }
  }
}
