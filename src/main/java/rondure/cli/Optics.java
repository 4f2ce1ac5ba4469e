package rondure.cli;

import java.util.Optional;
import picocli.CommandLine.Option;

/** Lens, sensor and aim of an exposure that is still to be made. */
final class Optics {
  /** Longer side of the frame that equivalent focal lengths refer to, mm. */
  private static final double FULL_FRAME_MM = 36;

  @Option(
      names = "--focal-length",
      paramLabel = "MM",
      required = true,
      description = "actual focal length, mm")
  private double focalLengthMm;

  @Option(names = "--pixel-pitch", paramLabel = "UM", description = "distance of pixels, µm")
  private Double pixelPitchMicrons;

  @Option(
      names = "--sensor-width",
      paramLabel = "MM",
      description = "longer side of the sensor, mm; with --pixels-across in place of the pitch")
  private Double sensorWidthMm;

  @Option(
      names = "--pixels-across",
      paramLabel = "N",
      description = "pixels along the longer side of a full-size picture")
  private Integer pixelsAcross;

  @Option(
      names = "--aim",
      paramLabel = "DEG",
      converter = AimConverter.class,
      description =
          "declination of the middle of the frame, degrees, or \"equator\" (as it is), or \"pole\"")
  private double declinationDeg;

  @Option(
      names = "--aperture",
      paramLabel = "N",
      description = "f-number, which the NPF rule asks for")
  private Double fNumber;

  @Option(
      names = "--star-width",
      paramLabel = "PX",
      description =
          "width (FWHM) of a sharp star with this lens, px; 2 as it is (sharp stars are 1.5 to 3 px"
              + " wide, common practice); a report tells yours as the sharpest tenth of a scene")
  private double starWidthPx = 2;

  double focalLengthMm() {
    return within("--focal-length", "mm", 0.5, 30_000, focalLengthMm);
  }

  double declinationDeg() {
    return declinationDeg;
  }

  double starWidthPx() {
    return within("--star-width", "px", 0.5, 100, starWidthPx);
  }

  Optional<Double> fNumber() {
    return Optional.ofNullable(fNumber).map(n -> within("--aperture", "", 0.3, 1000, n));
  }

  Optional<Double> sensorWidthMm() {
    return Optional.ofNullable(sensorWidthMm)
        .map(width -> within("--sensor-width", "mm", 1, 500, width));
  }

  /** On a frame of 36 mm; empty when the sensor's size is not known. */
  Optional<Double> focalLength35Mm() {
    Optional<Double> width = sensorWidthMm();
    return width.map(mm -> focalLengthMm() * FULL_FRAME_MM / mm);
  }

  /** As given, or from the sensor's size. */
  double pixelPitchMicrons() {
    boolean bySize = sensorWidthMm != null && pixelsAcross != null;
    if (pixelPitchMicrons == null && !bySize) {
      throw new IllegalArgumentException(
          "give the distance of pixels with --pixel-pitch, or --sensor-width and --pixels-across");
    }
    if (pixelPitchMicrons != null && pixelsAcross != null) {
      throw new IllegalArgumentException("give --pixel-pitch or --pixels-across, not both");
    }
    if (pixelPitchMicrons != null) {
      return within("--pixel-pitch", "µm", 0.2, 200, pixelPitchMicrons);
    }
    double across = within("--pixels-across", "", 100, 200_000, pixelsAcross);
    double pitch = 1000 * sensorWidthMm().orElseThrow() / across;
    return within("the distance of pixels that follows", "µm", 0.2, 200, pitch);
  }

  private static double within(String name, String unit, double least, double most, double value) {
    if (!(value >= least && value <= most)) {
      String range = ExposurePage.plain(least) + " to " + ExposurePage.plain(most) + " " + unit;
      throw new IllegalArgumentException(
          name + " must be " + range.strip() + ", was " + ExposurePage.plain(value));
    }
    return value;
  }
}
