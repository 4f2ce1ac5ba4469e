package rondure.intake;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Capture times as EXIF writes them (Exif 3.0, CIPA DC-008, table of date and time tags), or XMP,
 * with fraction and offset behind the seconds (ISO 8601).
 */
final class ExifTime {
  private static final int[] ORIGINAL = {0x9003, 0x9291, 0x9011};
  private static final int[] DIGITIZED = {0x9004, 0x9292, 0x9012};
  private static final Pattern MOMENT =
      Pattern.compile(
          "(\\d{4})[:\\-/.](\\d\\d)[:\\-/.](\\d\\d)[ T](\\d\\d):(\\d\\d):(\\d\\d)(?:\\.(\\d{1,9}))?"
              + "(?:(Z|[+-]\\d\\d:\\d\\d)?|.*)");
  private static final Pattern FRACTION = Pattern.compile("\\d{1,9}");
  private static final int FIRST_YEAR = 1900;

  private ExifTime() {}

  /** When the exposure began: DateTimeOriginal, else DateTimeDigitized. */
  static Optional<CaptureTime> of(ExifTags tags) {
    return of(tags, ORIGINAL).or(() -> of(tags, DIGITIZED));
  }

  private static Optional<CaptureTime> of(ExifTags tags, int[] dateFractionOffset) {
    Optional<String> fraction =
        tags.text(dateFractionOffset[1]).filter(text -> FRACTION.matcher(text).matches());
    return tags.text(dateFractionOffset[0])
        .flatMap(date -> parse(date, fraction, offset(tags.text(dateFractionOffset[2]))));
  }

  private static Optional<CaptureTime> parse(
      String date, Optional<String> fraction, OptionalInt offset) {
    Matcher parts = MOMENT.matcher(date);
    if (!parts.matches()) {
      return Optional.empty();
    }
    Optional<String> known = fraction.or(() -> Optional.ofNullable(parts.group(7)));
    try {
      LocalDateTime second =
          LocalDateTime.of(
              part(parts, 1),
              part(parts, 2),
              part(parts, 3),
              part(parts, 4),
              part(parts, 5),
              part(parts, 6));
      if (second.getYear() < FIRST_YEAR) {
        return Optional.empty();
      }
      LocalDateTime local = second.plusNanos(known.map(ExifTime::nanos).orElse(0L));
      OptionalInt east = offset.isPresent() ? offset : offset(Optional.ofNullable(parts.group(8)));
      return Optional.of(new CaptureTime(local, east, known.isPresent(), Fact.Source.FILE));
    } catch (DateTimeException impossible) {
      return Optional.empty();
    }
  }

  private static int part(Matcher parts, int group) {
    return Integer.parseInt(parts.group(group));
  }

  /** Decimal digits behind the second, "07" being 0.07 s. */
  private static long nanos(String fraction) {
    return Long.parseLong((fraction + "000000000").substring(0, 9));
  }

  private static OptionalInt offset(Optional<String> text) {
    try {
      return text.isPresent()
          ? OptionalInt.of(ZoneOffset.of(text.get()).getTotalSeconds())
          : OptionalInt.empty();
    } catch (DateTimeException impossible) {
      return OptionalInt.empty();
    }
  }
}
