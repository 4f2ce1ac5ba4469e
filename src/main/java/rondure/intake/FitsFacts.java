package rondure.intake;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/**
 * Facts from the first header of a FITS file. DATE-OBS and EXPTIME: FITS Standard 4.0, section 9;
 * FOCALLEN, APTDIA (mm), XPIXSZ (µm, binning included), AMBTEMP (°C), INSTRUME: common practice of
 * programs that control cameras.
 */
final class FitsFacts {
  private FitsFacts() {}

  /**
   * The facts of an opened FITS file; a damaged header gives missing facts.
   *
   * @throws IOException when the file cannot be read
   */
  static ShotFacts read(FileBytes file) throws IOException {
    try {
      return of(FitsHeader.read(file, 0), size(file));
    } catch (FrameProblem damaged) {
      return ShotFacts.unknown(ImageFormat.FITS);
    }
  }

  private static PictureSize size(FileBytes file) throws IOException {
    try {
      FitsHeader picture = FitsDecoder.picture(file);
      return PictureSize.ofHeader(picture.whole("NAXIS1", 0), picture.whole("NAXIS2", 0));
    } catch (FrameProblem notReadAsPicture) {
      return PictureSize.UNKNOWN;
    }
  }

  private static ShotFacts of(FitsHeader first, PictureSize size) {
    return new ShotFacts(
        ImageFormat.FITS,
        size.widthPx(),
        size.heightPx(),
        Orientation.NORMAL,
        time(first),
        fact(first, "EXPTIME", 86_400).or(() -> fact(first, "EXPOSURE", 86_400)),
        fNumber(first),
        fact(first, "ISOSPEED", 1e8).or(() -> fact(first, "ISO", 1e8)),
        fact(first, "FOCALLEN", 30_000),
        Optional.empty(),
        fact(first, "XPIXSZ", 200),
        value(first, "AMBTEMP", -90, 70).map(celsius -> new Fact<>(celsius, Fact.Source.FILE)),
        first.words("INSTRUME").flatMap(ExifTags::clean).map(Fact::ofFile),
        Optional.empty(),
        false);
  }

  /** Focal length over aperture, both in mm. */
  private static Optional<Fact<Double>> fNumber(FitsHeader header) {
    Optional<Double> focal = value(header, "FOCALLEN", 1e-3, 30_000);
    Optional<Double> aperture = value(header, "APTDIA", 1e-3, 30_000);
    return focal
        .flatMap(mm -> aperture.map(diameter -> mm / diameter))
        .filter(number -> number > 0.3 && number < 1000)
        .map(number -> new Fact<>(number, Fact.Source.DERIVED));
  }

  private static Optional<Fact<Double>> fact(FitsHeader header, String keyword, double most) {
    return value(header, keyword, Double.MIN_VALUE, most)
        .map(number -> new Fact<>(number, Fact.Source.FILE));
  }

  private static Optional<Double> value(
      FitsHeader header, String keyword, double least, double most) {
    OptionalDouble number = header.real(keyword);
    return number.isPresent() && number.getAsDouble() >= least && number.getAsDouble() <= most
        ? Optional.of(number.getAsDouble())
        : Optional.empty();
  }

  /** DATE-OBS, or an older DATE-OBS with the hour in TIME-OBS; UTC unless TIMESYS says LOCAL. */
  private static Optional<CaptureTime> time(FitsHeader header) {
    String date = header.words("DATE-OBS").orElse("").replaceFirst("Z$", "");
    if (!date.contains("T") && header.words("TIME-OBS").isPresent()) {
      date = date + "T" + header.words("TIME-OBS").get();
    }
    boolean localTime = header.words("TIMESYS").map("LOCAL"::equalsIgnoreCase).orElse(false);
    try {
      LocalDateTime local = LocalDateTime.parse(date);
      if (local.toLocalDate().isBefore(LocalDate.of(1900, 1, 1))) {
        return Optional.empty();
      }
      return Optional.of(
          new CaptureTime(
              local,
              localTime ? OptionalInt.empty() : OptionalInt.of(0),
              date.contains("."),
              Fact.Source.FILE));
    } catch (DateTimeException absent) {
      return Optional.empty();
    }
  }
}
