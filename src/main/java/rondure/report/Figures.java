package rondure.report;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import rondure.report.layout.Glyphs;

/** Numbers as they are printed: always the same way, whatever the computer's language. */
final class Figures {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter CLOCK_SECONDS =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  private static final DateTimeFormatter DAY_AND_MONTH =
      DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);

  private Figures() {}

  static String fixed(int decimals, double value) {
    return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + decimals + "f", value) : "?";
  }

  /** At most this many decimals, without trailing zeros: 2.8, 24, 0.5. */
  static String plain(int decimalsMost, double value) {
    String text = fixed(decimalsMost, value);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  static String px(double value) {
    return fixed(value < 9.95 ? 1 : 0, value);
  }

  static String percent(double fraction) {
    return fixed(0, 100 * fraction) + " %";
  }

  /** A name of at most {@code most} characters, its middle left out where it is longer. */
  static String shortened(String name, int most) {
    int[] characters = Glyphs.printable(name).codePoints().toArray();
    if (characters.length <= most) {
      return name;
    }
    int end = most / 3;
    int start = most - end - 1;
    return new String(characters, 0, start)
        + "…"
        + new String(characters, characters.length - end, end);
  }

  /** The first letter large, as at the start of a sentence. */
  static String capitalised(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** Shares of the white level are often below one percent. */
  static String smallPercent(double fraction) {
    return fixed(fraction < 0.0995 ? 1 : 0, 100 * fraction) + " %";
  }

  /** "1/60 s" or "20 s". */
  static String exposure(double seconds) {
    return seconds > 0 && seconds < 0.4
        ? "1/" + fixed(0, 1 / seconds) + " s"
        : plain(1, seconds) + " s";
  }

  /**
   * An exposure worked out, not one that was made: whole seconds from 10 s on, hundredths below 1
   * s, where the nearest fraction would be up to a fifth off.
   */
  static String aboutExposure(double seconds) {
    return seconds >= 0.1 && seconds < 0.995
        ? plain(2, seconds) + " s"
        : exposure(seconds < 9.95 ? seconds : Math.rint(seconds));
  }

  static String clock(LocalDateTime time) {
    return CLOCK.format(time);
  }

  static String clockSeconds(LocalDateTime time) {
    return CLOCK_SECONDS.format(time);
  }

  static String date(LocalDateTime time) {
    return DATE.format(time);
  }

  static String dayAndMonth(LocalDateTime time) {
    return DAY_AND_MONTH.format(time);
  }

  /** A number by the unit at the end of its name: fwhmPx, angleDeg, widthRatio, starCount. */
  static String byName(String name, double value) {
    if (name.endsWith("Px") || name.equals("ratio")) {
      return px(value);
    }
    if (name.endsWith("Deg")
        || name.endsWith("Arcmin")
        || name.endsWith("Count")
        || name.endsWith("Percent")) {
      return fixed(0, value);
    }
    if (name.endsWith("Ratio")) {
      return fixed(1, value);
    }
    if (name.equals("coherence") || name.endsWith("Share")) {
      return percent(value);
    }
    return fixed(2, value);
  }
}
