package rondure.intake;

import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Facts given by the user; they win over the files'.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param iso sensitivity
 * @param focalLengthMm actual focal length
 * @param focalLength35Mm 35 mm equivalent focal length
 * @param pixelPitchMicrons distance of pixels
 * @param clockShifts what to add to a camera's times, by (part of) its model name
 */
public record FactOverrides(
    Optional<Double> exposureSeconds,
    Optional<Double> fNumber,
    Optional<Double> iso,
    Optional<Double> focalLengthMm,
    Optional<Double> focalLength35Mm,
    Optional<Double> pixelPitchMicrons,
    Map<String, Duration> clockShifts) {

  /**
   * @throws IllegalArgumentException for people, when a value is not above 0 and finite, or a
   *     camera has two clock shifts
   */
  public FactOverrides {
    requirePositive("exposure", exposureSeconds);
    requirePositive("aperture", fNumber);
    requirePositive("ISO", iso);
    requirePositive("focal length", focalLengthMm);
    requirePositive("35 mm equivalent", focalLength35Mm);
    requirePositive("pixel pitch", pixelPitchMicrons);
    clockShifts = Map.copyOf(clockShifts);
    new ClockShifts(clockShifts);
  }

  public static FactOverrides none() {
    return new FactOverrides(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Map.of());
  }

  /**
   * The facts with the user's in their place, and the pixel pitch derived anew where a given focal
   * length or 35 mm equivalent makes that possible.
   */
  public ShotFacts apply(ShotFacts facts) {
    return new ShotFacts(
        facts.format(),
        facts.widthPx(),
        facts.heightPx(),
        facts.orientation(),
        facts.captureTime().map(time -> shifted(time, facts.cameraModel())),
        given(exposureSeconds, facts.exposureSeconds()),
        given(fNumber, facts.fNumber()),
        given(iso, facts.iso()),
        given(focalLengthMm, facts.focalLengthMm()),
        given(focalLength35Mm, facts.focalLength35Mm()),
        pitch(facts),
        facts.ambientTemperatureC(),
        facts.cameraModel(),
        facts.lensModel(),
        facts.composite());
  }

  /**
   * One sentence for each clock shift whose name fits none of these cameras, or several.
   *
   * @param cameraModels the set's cameras
   */
  public List<String> clockShiftTroubles(Collection<String> cameraModels) {
    return new ClockShifts(clockShifts).troubles(cameraModels);
  }

  /**
   * A given equivalent is an answer to a wrong or missing pitch. A given focal length alone is one
   * only where the file had none: else the file's own pair has been used already.
   */
  private Optional<Fact<Double>> pitch(ShotFacts facts) {
    Optional<Fact<Double>> own = facts.pixelPitchMicrons();
    boolean fromFile = own.isPresent() && own.get().source() == Fact.Source.FILE;
    boolean fillsGap =
        own.isEmpty() && focalLengthMm.isPresent() && facts.focalLengthMm().isEmpty();
    Optional<Fact<Double>> derived = Optional.empty();
    if (!fromFile && (focalLength35Mm.isPresent() || fillsGap)) {
      derived = derived(facts);
    }
    return given(pixelPitchMicrons, derived.isPresent() ? derived : own);
  }

  private Optional<Fact<Double>> derived(ShotFacts facts) {
    Optional<Fact<Double>> focal = given(focalLengthMm, facts.focalLengthMm());
    Optional<Fact<Double>> focal35 = given(focalLength35Mm, facts.focalLength35Mm());
    PictureSize size = new PictureSize(facts.widthPx(), facts.heightPx());
    if (focal.isEmpty() || focal35.isEmpty() || !size.known()) {
      return Optional.empty();
    }
    return PixelPitch.ofEquivalent(focal.get().value(), focal35.get().value(), size)
        .map(microns -> new Fact<>(microns, Fact.Source.DERIVED));
  }

  private CaptureTime shifted(CaptureTime time, Optional<String> camera) {
    return new ClockShifts(clockShifts)
        .of(camera)
        .map(
            shift ->
                new CaptureTime(
                    time.local().plus(shift),
                    time.offsetSeconds(),
                    time.subSecondsKnown(),
                    Fact.Source.OPTION))
        .orElse(time);
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
