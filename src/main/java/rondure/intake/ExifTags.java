package rondure.intake;

import com.drew.lang.Rational;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.StringValue;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifImageDirectory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.PanasonicRawIFD0Directory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The EXIF and TIFF tags of the picture itself, as checked values: the directories of thumbnails,
 * position and maker notes are left out. The first directory that holds a sensible value answers;
 * where none does, XMP.
 */
final class ExifTags {
  private static final int TEXT_MAX = 80;

  private final List<Directory> directories = new ArrayList<>();
  private final XmpTags xmp;

  ExifTags(Metadata metadata) {
    xmp = new XmpTags(metadata);
    metadata.getDirectoriesOfType(ExifIFD0Directory.class).forEach(directories::add);
    metadata.getDirectoriesOfType(PanasonicRawIFD0Directory.class).forEach(directories::add);
    metadata.getDirectoriesOfType(ExifSubIFDDirectory.class).forEach(directories::add);
    metadata.getDirectoriesOfType(ExifImageDirectory.class).forEach(directories::add);
  }

  List<Directory> directories() {
    return directories;
  }

  /** A number above 0 and at most {@code most}. */
  Optional<Double> positive(int tag, double most) {
    return first(tag, value -> value > 0 && value <= most);
  }

  /** A finite number in [{@code least}, {@code most}]. */
  Optional<Double> number(int tag, double least, double most) {
    return first(tag, value -> value >= least && value <= most);
  }

  private Optional<Double> first(int tag, Predicate<Double> sensible) {
    for (Directory directory : directories) {
      Optional<Double> value = number(directory, tag).filter(sensible);
      if (value.isPresent()) {
        return value;
      }
    }
    return xmp.number(tag).filter(sensible);
  }

  /** The value of a tag in one directory, of a list the first; a zero denominator is no value. */
  static Optional<Double> number(Directory directory, int tag) {
    Object value = directory.getObject(tag);
    if (value instanceof int[] list && list.length > 0) {
      value = list[0];
    } else if (value instanceof short[] list && list.length > 0) {
      value = list[0];
    } else if (value instanceof Rational[] list && list.length > 0) {
      value = list[0];
    }
    if (value instanceof Rational fraction) {
      long below = fraction.getDenominator();
      boolean unknown = below == 0 || below == -1 || below == 0xFFFFFFFFL;
      return unknown
          ? Optional.empty()
          : Optional.of(fraction.getNumerator() / (double) fraction.getDenominator());
    }
    return value instanceof Number number
        ? Optional.of(number.doubleValue()).filter(Double::isFinite)
        : Optional.empty();
  }

  /** Printable text of at most 80 characters with at least one letter or digit. */
  Optional<String> text(int tag) {
    for (Directory directory : directories) {
      Object value = directory.getObject(tag);
      byte[] bytes =
          value instanceof StringValue string
              ? string.getBytes()
              : String.valueOf(value == null ? "" : value).getBytes(StandardCharsets.UTF_8);
      Optional<String> text = clean(new String(bytes, StandardCharsets.UTF_8));
      if (text.isPresent()) {
        return text;
      }
    }
    return xmp.text(tag).flatMap(ExifTags::clean);
  }

  /**
   * Text for people: up to its first NUL, without control, direction and damaged characters, runs
   * of spaces as one, at most 80 characters; empty when no letter or digit is left.
   */
  static Optional<String> clean(String raw) {
    int nul = raw.indexOf('\0');
    String plain =
        (nul < 0 ? raw : raw.substring(0, nul))
            .replaceAll("[\\s\\p{Z}]+", " ")
            .replaceAll("[\\p{C}\uFFFD]", "")
            .strip();
    int count = Math.min(TEXT_MAX, plain.codePointCount(0, plain.length()));
    String text = plain.substring(0, plain.offsetByCodePoints(0, count)).strip();
    return text.codePoints().anyMatch(Character::isLetterOrDigit)
        ? Optional.of(text)
        : Optional.empty();
  }
}
