package rondure.intake;

import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Facts given by the user; they win over the files'.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param focalLengthMm actual focal length
 * @param pixelPitchMicrons distance of pixels
 * @param clockShifts what to add to a camera's times, by (part of) its model name
 */
public record FactOverrides(
    Optional<Double> exposureSeconds,
    Optional<Double> fNumber,
    Optional<Double> focalLengthMm,
    Optional<Double> pixelPitchMicrons,
    Map<String, Duration> clockShifts) {
  public FactOverrides {
    requirePositive("exposure", exposureSeconds);
    requirePositive("aperture", fNumber);
    requirePositive("focal length", focalLengthMm);
    requirePositive("pixel pitch", pixelPitchMicrons);
    clockShifts = Map.copyOf(clockShifts);
  }

  public static FactOverrides none() {
    return new FactOverrides(
        Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Map.of());
  }

  /** The facts with the user's in their place. */
  public ShotFacts apply(ShotFacts facts) {
    return new ShotFacts(
        facts.format(),
        facts.widthPx(),
        facts.heightPx(),
        facts.orientation(),
        facts.captureTime().map(time -> shifted(time, facts.cameraModel())),
        given(exposureSeconds, facts.exposureSeconds()),
        given(fNumber, facts.fNumber()),
        facts.iso(),
        given(focalLengthMm, facts.focalLengthMm()),
        facts.focalLength35Mm(),
        given(pixelPitchMicrons, facts.pixelPitchMicrons()),
        facts.ambientTemperatureC(),
        facts.cameraModel(),
        facts.lensModel(),
        facts.composite());
  }

  private CaptureTime shifted(CaptureTime time, Optional<String> camera) {
    String model = camera.orElse("").toLowerCase(Locale.ROOT);
    for (Map.Entry<String, Duration> shift : clockShifts.entrySet()) {
      if (model.contains(shift.getKey().toLowerCase(Locale.ROOT))) {
        return new CaptureTime(
            time.local().plus(shift.getValue()),
            time.offsetSeconds(),
            time.subSecondsKnown(),
            Fact.Source.OPTION);
      }
    }
    return time;
  }

  private static Optional<Fact<Double>> given(Optional<Double> option, Optional<Fact<Double>> own) {
    return option.map(value -> new Fact<>(value, Fact.Source.OPTION)).or(() -> own);
  }

  private static void requirePositive(String name, Optional<Double> value) {
    if (value.isPresent() && !(value.get() > 0 && Double.isFinite(value.get()))) {
      throw new IllegalArgumentException(name + " must be > 0, was " + value.get());
    }
  }
}
