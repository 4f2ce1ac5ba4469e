package rondure.intake;

import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.xmp.XmpDirectory;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.StreamSupport;
import rondure.base.Orientation;

/** Facts from EXIF, TIFF, PNG and JPEG headers as the metadata library reads them. */
final class ExifFacts {
  private static final DateTimeFormatter EXIF_TIME =
      DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss");
  private static final int AMBIENT_TEMPERATURE = 0x9400;
  private static final int COMPOSITE_IMAGE = 0xA460;
  private static final int TEXT_MAX = 80;

  private final Metadata metadata;
  private final ImageFormat format;

  ExifFacts(Metadata metadata, ImageFormat format) {
    this.metadata = metadata;
    this.format = format;
  }

  ShotFacts facts() {
    int widthPx = largest(ExifDirectoryBase.TAG_IMAGE_WIDTH, "Image Width");
    int heightPx = largest(ExifDirectoryBase.TAG_IMAGE_HEIGHT, "Image Height");
    Optional<Double> focal = positive(ExifDirectoryBase.TAG_FOCAL_LENGTH);
    Optional<Double> focal35 = positive(ExifDirectoryBase.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH);
    Optional<Double> exposure =
        positive(ExifDirectoryBase.TAG_EXPOSURE_TIME)
            .or(() -> number(ExifDirectoryBase.TAG_SHUTTER_SPEED).map(tv -> Math.pow(2, -tv)));
    return new ShotFacts(
        format,
        widthPx,
        heightPx,
        Orientation.ofExif(
            number(ExifDirectoryBase.TAG_ORIENTATION).map(Double::intValue).orElse(1)),
        time(),
        fact(exposure),
        fact(positive(ExifDirectoryBase.TAG_FNUMBER)),
        fact(positive(ExifDirectoryBase.TAG_ISO_EQUIVALENT)),
        fact(focal),
        fact(focal35),
        pitch(focal, focal35, widthPx, heightPx),
        fact(number(AMBIENT_TEMPERATURE).filter(celsius -> celsius > -90 && celsius < 70)),
        camera(),
        text(ExifDirectoryBase.TAG_LENS_MODEL),
        composite());
  }

  /** Text without control characters, trimmed, at most 80 characters. */
  static String clean(String raw) {
    String plain = raw.replaceAll("\\p{C}", "").trim();
    return plain.length() > TEXT_MAX ? plain.substring(0, TEXT_MAX) : plain;
  }

  private Optional<Fact<Double>> pitch(
      Optional<Double> focal, Optional<Double> focal35, int widthPx, int heightPx) {
    Optional<Double> resolution = positive(ExifDirectoryBase.TAG_FOCAL_PLANE_X_RESOLUTION);
    int unit =
        number(ExifDirectoryBase.TAG_FOCAL_PLANE_RESOLUTION_UNIT).map(Double::intValue).orElse(2);
    double recordedWidth =
        positive(ExifDirectoryBase.TAG_EXIF_IMAGE_WIDTH).orElse((double) widthPx);
    double shrink = widthPx > 0 && recordedWidth > widthPx ? recordedWidth / widthPx : 1;
    Optional<Fact<Double>> fromResolution =
        resolution
            .flatMap(value -> PixelPitch.ofResolution(value, unit))
            .map(microns -> new Fact<>(microns * shrink, Fact.Source.DERIVED));
    if (fromResolution.isPresent() || focal.isEmpty() || focal35.isEmpty() || widthPx == 0) {
      return fromResolution;
    }
    return PixelPitch.ofEquivalent(focal.get(), focal35.get(), widthPx, heightPx)
        .map(microns -> new Fact<>(microns, Fact.Source.DERIVED));
  }

  private Optional<CaptureTime> time() {
    Optional<String> text = text(ExifDirectoryBase.TAG_DATETIME_ORIGINAL);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      LocalDateTime local = LocalDateTime.parse(text.get(), EXIF_TIME);
      Optional<String> fraction =
          text(ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL).filter(s -> s.matches("\\d{1,9}"));
      long nanos = fraction.map(s -> Long.parseLong((s + "000000000").substring(0, 9))).orElse(0L);
      return Optional.of(
          new CaptureTime(
              local.plusNanos(nanos), offset(), fraction.isPresent(), Fact.Source.FILE));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private OptionalInt offset() {
    try {
      return text(ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL)
          .map(text -> OptionalInt.of(ZoneOffset.of(text).getTotalSeconds()))
          .orElse(OptionalInt.empty());
    } catch (DateTimeException e) {
      return OptionalInt.empty();
    }
  }

  private Optional<String> camera() {
    Optional<String> model = text(ExifDirectoryBase.TAG_MODEL);
    return model.or(() -> text(ExifDirectoryBase.TAG_MAKE));
  }

  private boolean composite() {
    boolean exif = number(COMPOSITE_IMAGE).orElse(0.0) >= 2;
    return exif
        || metadata.getDirectoriesOfType(XmpDirectory.class).stream()
            .anyMatch(xmp -> xmp.getXmpProperties().containsKey("GPano:ProjectionType"));
  }

  private int largest(int exifTag, String tagName) {
    int largest = 0;
    for (Directory directory : metadata.getDirectories()) {
      boolean exif = directory instanceof ExifDirectoryBase;
      for (var tag : directory.getTags()) {
        if (exif ? tag.getTagType() == exifTag : tag.getTagName().equals(tagName)) {
          Integer value = directory.getInteger(tag.getTagType());
          largest = Math.max(largest, value == null ? 0 : value);
        }
      }
    }
    return largest;
  }

  private Optional<Double> number(int tag) {
    return exif()
        .map(directory -> directory.getDoubleObject(tag))
        .filter(value -> value != null && Double.isFinite(value))
        .findFirst();
  }

  private Optional<Double> positive(int tag) {
    return number(tag).filter(value -> value > 0);
  }

  private Optional<String> text(int tag) {
    return exif()
        .map(directory -> directory.getString(tag))
        .filter(value -> value != null && !clean(value).isEmpty())
        .map(ExifFacts::clean)
        .findFirst();
  }

  private java.util.stream.Stream<ExifDirectoryBase> exif() {
    return StreamSupport.stream(
        metadata.getDirectoriesOfType(ExifDirectoryBase.class).spliterator(), false);
  }

  private static Optional<Fact<Double>> fact(Optional<Double> value) {
    return value.map(number -> new Fact<>(number, Fact.Source.FILE));
  }
}
