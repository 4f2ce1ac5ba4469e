package rondure;

import java.util.List;
import java.util.Optional;

/**
 * Facts that the user gives on the command line.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param iso sensitivity
 * @param focalLengthMm actual focal length
 * @param focalLength35Mm 35 mm equivalent focal length
 * @param pixelPitchMicrons distance of pixels
 * @param clockShifts what to add to cameras' times, each CAMERA=±hh:mm:ss
 */
public record GivenFacts(
    Optional<Double> exposureSeconds,
    Optional<Double> fNumber,
    Optional<Double> iso,
    Optional<Double> focalLengthMm,
    Optional<Double> focalLength35Mm,
    Optional<Double> pixelPitchMicrons,
    List<String> clockShifts) {
  public GivenFacts {
    clockShifts = List.copyOf(clockShifts);
  }
}
