package rondure.intake;

import java.util.Optional;
import rondure.base.Orientation;

/**
 * What one file says about its exposure. Facts may be missing. Never holds owner, serial or GPS.
 *
 * @param format kind of file, by content
 * @param widthPx stored width by the header, 0 when unknown
 * @param heightPx stored height by the header, 0 when unknown
 * @param orientation how the stored raster is turned for display
 * @param captureTime start of the exposure
 * @param exposureSeconds nominal exposure time
 * @param fNumber aperture
 * @param iso sensitivity
 * @param focalLengthMm actual focal length
 * @param focalLength35Mm 35 mm equivalent focal length
 * @param pixelPitchMicrons distance of stored pixels, µm
 * @param ambientTemperatureC air temperature (EXIF 0x9400), not the camera's
 * @param cameraModel maker and model, for grouping
 * @param lensModel lens, for grouping
 * @param composite true when the file says it is a panorama, stack or other composite (open
 *     metadata: photo-sphere XMP, EXIF CompositeImage 0xA460)
 */
public record ShotFacts(
    ImageFormat format,
    int widthPx,
    int heightPx,
    Orientation orientation,
    Optional<CaptureTime> captureTime,
    Optional<Fact<Double>> exposureSeconds,
    Optional<Fact<Double>> fNumber,
    Optional<Fact<Double>> iso,
    Optional<Fact<Double>> focalLengthMm,
    Optional<Fact<Double>> focalLength35Mm,
    Optional<Fact<Double>> pixelPitchMicrons,
    Optional<Fact<Double>> ambientTemperatureC,
    Optional<Fact<String>> cameraModel,
    Optional<Fact<String>> lensModel,
    boolean composite) {

  /** The camera's maker and model, wherever known from. */
  public Optional<String> camera() {
    return cameraModel.map(Fact::value);
  }

  /** The lens's name, wherever known from. */
  public Optional<String> lens() {
    return lensModel.map(Fact::value);
  }

  /** Facts of a file that says nothing but its kind. */
  public static ShotFacts unknown(ImageFormat format) {
    return new ShotFacts(
        format,
        0,
        0,
        Orientation.NORMAL,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false);
  }
}
