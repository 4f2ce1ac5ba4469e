package rondure.intake;

import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMeta;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.PanasonicRawIFD0Directory;
import com.drew.metadata.xmp.XmpDirectory;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import rondure.base.Orientation;

/**
 * Facts from EXIF, TIFF, PNG and JPEG headers as the metadata library reads them. Tag numbers and
 * meanings: Exif 3.0 (CIPA DC-008). Values of 0, infinite or beyond what exists count as missing.
 */
final class ExifFacts {
  private static final int EXPOSURE_TIME = 0x829A;
  private static final int F_NUMBER = 0x829D;
  private static final int ISO = 0x8827;
  private static final int[] LARGE_ISO = {0x8832, 0x8831, 0x8833};
  private static final int SHUTTER_SPEED = 0x9201;
  private static final int APERTURE = 0x9202;
  private static final int FOCAL_LENGTH = 0x920A;
  private static final int AMBIENT_TEMPERATURE = 0x9400;
  private static final int RESOLUTION_X = 0xA20E;
  private static final int RESOLUTION_Y = 0xA20F;
  private static final int RESOLUTION_UNIT = 0xA210;
  private static final int FOCAL_LENGTH_35 = 0xA405;
  private static final int COMPOSITE_IMAGE = 0xA460;
  private static final int ORIENTATION = 0x0112;
  private static final int MAKE = 0x010F;
  private static final int MODEL = 0x0110;
  private static final int UNIQUE_MODEL = 0xC614;
  private static final int LENS_MAKE = 0xA433;
  private static final int LENS_MODEL = 0xA434;

  private static final double ISO_FIELD_FULL = 65_535;
  private static final double EXPOSURE_MAX = 86_400;
  private static final double F_NUMBER_MAX = 1000;
  private static final double FOCAL_MAX = 30_000;
  private static final double ISO_MAX = 1e8;
  private static final double RESOLUTION_MAX = 1e7;
  private static final String PANORAMA = "http://ns.google.com/photos/1.0/panorama/";

  private final Metadata metadata;
  private final ExifTags tags;
  private final ImageFormat format;

  ExifFacts(Metadata metadata, ImageFormat format) {
    this.metadata = metadata;
    this.tags = new ExifTags(metadata);
    this.format = format;
  }

  ShotFacts facts() {
    PictureSize stored =
        guarded(() -> Optional.of(PictureSize.stored(metadata, tags, format)))
            .orElse(PictureSize.UNKNOWN);
    Optional<String> camera = guarded(this::camera);
    return new ShotFacts(
        format,
        stored.widthPx(),
        stored.heightPx(),
        guarded(() -> tags.number(ORIENTATION, 1, 8))
            .map(value -> Orientation.ofExif(value.intValue()))
            .orElse(Orientation.NORMAL),
        guarded(() -> ExifTime.of(tags)),
        fact(guarded(this::exposureSeconds)),
        fact(guarded(this::fNumber)),
        fact(guarded(this::iso)),
        fact(focalLength(FOCAL_LENGTH)),
        fact(focalLength(FOCAL_LENGTH_35)),
        pitch(stored, camera),
        fact(guarded(() -> tags.number(AMBIENT_TEMPERATURE, -90, 70))),
        camera.map(Fact::ofFile),
        guarded(this::lens).map(Fact::ofFile),
        guarded(() -> Optional.of(composite())).orElse(false));
  }

  private Optional<Double> exposureSeconds() {
    return tags.positive(EXPOSURE_TIME, EXPOSURE_MAX)
        .or(
            () ->
                tags.number(SHUTTER_SPEED, -16, 20)
                    .filter(timeValue -> timeValue != 0)
                    .map(ExifFacts::secondsOfApex));
  }

  private Optional<Double> fNumber() {
    return tags.positive(F_NUMBER, F_NUMBER_MAX)
        .or(() -> tags.positive(APERTURE, 20).map(ExifFacts::fNumberOfApex));
  }

  /** Exposure time from the APEX time value: t = 2^(−Tv) (Exif 3.0, annex on APEX units). */
  static double secondsOfApex(double timeValue) {
    return Math.pow(2, -timeValue);
  }

  /** F-number from the APEX aperture value: N = 2^(Av / 2) (Exif 3.0, annex on APEX units). */
  static double fNumberOfApex(double apertureValue) {
    return Math.pow(2, apertureValue / 2);
  }

  /** The classic field holds 16 bits; larger values stand in fields of their own. */
  private Optional<Double> iso() {
    Optional<Double> large = Optional.empty();
    for (int tag : LARGE_ISO) {
      large = large.isPresent() ? large : tags.positive(tag, ISO_MAX);
    }
    Optional<Double> classic = tags.positive(ISO, ISO_MAX).filter(value -> value < ISO_FIELD_FULL);
    Optional<Double> other = large;
    return classic
        .or(() -> other)
        .or(() -> tags.positive(ISO, ISO_MAX))
        .or(() -> tags.positive(PanasonicRawIFD0Directory.TagIso, ISO_MAX).filter(this::panasonic));
  }

  private boolean panasonic(double unused) {
    return metadata.containsDirectoryOfType(PanasonicRawIFD0Directory.class);
  }

  private Optional<Double> focalLength(int tag) {
    return guarded(() -> tags.positive(tag, FOCAL_MAX));
  }

  private Optional<Fact<Double>> pitch(PictureSize stored, Optional<String> camera) {
    Optional<Fact<Double>> derived =
        guarded(() -> PixelPitch.find(evidence(stored)))
            .map(microns -> new Fact<>(microns, Fact.Source.DERIVED));
    return derived.or(
        () ->
            camera
                .flatMap(model -> SensorTable.pitchMicrons(model, stored))
                .map(microns -> new Fact<>(microns, Fact.Source.TABLE)));
  }

  private PixelPitch.Evidence evidence(PictureSize stored) {
    return new PixelPitch.Evidence(
        format,
        stored,
        PictureSize.recorded(tags),
        tags.positive(RESOLUTION_X, RESOLUTION_MAX),
        tags.positive(RESOLUTION_Y, RESOLUTION_MAX),
        tags.number(RESOLUTION_UNIT, 1, 5).map(Double::intValue).orElse(2),
        focalLength(FOCAL_LENGTH),
        focalLength(FOCAL_LENGTH_35));
  }

  private Optional<String> camera() {
    return named(tags.text(MAKE), tags.text(MODEL)).or(() -> tags.text(UNIQUE_MODEL));
  }

  private Optional<String> lens() {
    return named(tags.text(LENS_MAKE), tags.text(LENS_MODEL).filter(ExifFacts::saysALens));
  }

  /** Cameras write "0.0 mm f/0.0" for a lens that they cannot ask. */
  private static boolean saysALens(String name) {
    return name.matches(".*[1-9].*") || name.chars().filter(Character::isLetter).count() > 3;
  }

  /** Maker and model, the maker's name once; nothing without a model. */
  static Optional<String> named(Optional<String> maker, Optional<String> model) {
    if (model.isEmpty() || maker.isEmpty()) {
      return model;
    }
    String first = maker.get().split(" ")[0].toLowerCase(Locale.ROOT);
    boolean twice = model.get().toLowerCase(Locale.ROOT).startsWith(first);
    return twice ? model : ExifTags.clean(maker.get() + " " + model.get());
  }

  /** A photo-sphere panorama, or a picture that EXIF 2.32 calls composite. */
  private boolean composite() {
    if (tags.number(COMPOSITE_IMAGE, 2, 3).isPresent()) {
      return true;
    }
    for (XmpDirectory directory : metadata.getDirectoriesOfType(XmpDirectory.class)) {
      XMPMeta xmp = directory.getXMPMeta();
      try {
        if (xmp != null && xmp.getProperty(PANORAMA, "ProjectionType") != null) {
          return true;
        }
      } catch (XMPException damaged) {
        continue;
      }
    }
    return false;
  }

  /** Damage that trips the library leaves this one fact missing. */
  private static <T> Optional<T> guarded(Supplier<Optional<T>> fact) {
    try {
      return fact.get();
    } catch (RuntimeException damaged) {
      return Optional.empty();
    }
  }

  private static Optional<Fact<Double>> fact(Optional<Double> value) {
    return value.map(number -> new Fact<>(number, Fact.Source.FILE));
  }
}
