package rondure;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/**
 * Facts that the user gives on the command line.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param focalLengthMm actual focal length
 * @param pixelPitchMicrons distance of pixels
 * @param clockShifts what to add to a camera's times, by (part of) its model name
 */
public record GivenFacts(
    Optional<Double> exposureSeconds,
    Optional<Double> fNumber,
    Optional<Double> focalLengthMm,
    Optional<Double> pixelPitchMicrons,
    Map<String, Duration> clockShifts) {
  public GivenFacts {
    clockShifts = Map.copyOf(clockShifts);
  }
}
