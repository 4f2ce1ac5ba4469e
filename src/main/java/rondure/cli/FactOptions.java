package rondure.cli;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;
import rondure.GivenFacts;

/** Facts that the files do not hold, or hold wrongly. */
final class FactOptions {
  @Option(names = "--exposure", paramLabel = "S", description = "exposure time, seconds")
  private Double exposureSeconds;

  @Option(names = "--aperture", paramLabel = "N", description = "f-number")
  private Double fNumber;

  @Option(names = "--iso", paramLabel = "ISO", description = "sensitivity")
  private Double iso;

  @Option(names = "--focal-length", paramLabel = "MM", description = "actual focal length, mm")
  private Double focalLengthMm;

  @Option(
      names = "--focal-length-35",
      paramLabel = "MM",
      description = "35 mm equivalent focal length, mm")
  private Double focalLength35Mm;

  @Option(names = "--pixel-pitch", paramLabel = "UM", description = "distance of pixels, µm")
  private Double pixelPitchMicrons;

  @Option(names = "--temperature", paramLabel = "C", description = "air temperature, °C")
  private Double ambientTemperatureC;

  @Option(
      names = "--orientation",
      paramLabel = "1-8",
      description = "how pictures are turned for display (EXIF value; 1 = as they are)")
  private Integer orientation;

  @Option(
      names = "--camera",
      paramLabel = "NAME",
      description = "camera of the files that name none")
  private String camera;

  @Option(names = "--lens", paramLabel = "NAME", description = "lens, to tell scenes apart")
  private String lens;

  @Option(
      names = "--clock-shift",
      paramLabel = "CAMERA=±hh:mm:ss",
      description = "moves the times of one camera")
  private List<String> clockShifts = List.of();

  GivenFacts given() {
    return new GivenFacts(
        Optional.ofNullable(exposureSeconds),
        Optional.ofNullable(fNumber),
        Optional.ofNullable(iso),
        Optional.ofNullable(focalLengthMm),
        Optional.ofNullable(focalLength35Mm),
        Optional.ofNullable(pixelPitchMicrons),
        Optional.ofNullable(ambientTemperatureC),
        Optional.ofNullable(orientation),
        Optional.ofNullable(camera),
        Optional.ofNullable(lens),
        clockShifts);
  }
}
