package rondure.cli;

import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** An aim in words or as a declination, degrees: "equator", "pole", "-55". */
final class AimConverter implements ITypeConverter<Double> {
  @Override
  public Double convert(String text) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    if (word.equals("equator")) {
      return 0.0;
    }
    if (word.equals("pole")) {
      return 90.0;
    }
    try {
      double declinationDeg = Double.parseDouble(word);
      if (Math.abs(declinationDeg) <= 90) {
        return declinationDeg;
      }
    } catch (NumberFormatException e) {
      // Said below, with what would do.
    }
    throw new TypeConversionException(
        "an aim is \"equator\", \"pole\" or a declination from -90 to 90 degrees, found \""
            + text
            + "\"");
  }
}
