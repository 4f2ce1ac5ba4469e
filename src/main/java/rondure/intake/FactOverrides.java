package rondure.intake;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.base.Orientation;

/**
 * Facts given by the user; they win over the files', but for the camera: it is given to files that
 * name none.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param iso sensitivity
 * @param focalLengthMm actual focal length
 * @param focalLength35Mm 35 mm equivalent focal length
 * @param pixelPitchMicrons distance of pixels
 * @param ambientTemperatureC air temperature
 * @param orientation how the stored rasters are turned for display
 * @param cameraModel of files that name no camera
 * @param lensModel lens
 * @param clockShifts what to add to a camera's times, by (part of) its model name
 */
public record FactOverrides(
    Optional<Double> exposureSeconds,
    Optional<Double> fNumber,
    Optional<Double> iso,
    Optional<Double> focalLengthMm,
    Optional<Double> focalLength35Mm,
    Optional<Double> pixelPitchMicrons,
    Optional<Double> ambientTemperatureC,
    Optional<Orientation> orientation,
    Optional<String> cameraModel,
    Optional<String> lensModel,
    Map<String, Duration> clockShifts) {

  /**
   * @throws IllegalArgumentException for people, when a value is out of its range, a name is blank,
   *     or a camera has two clock shifts
   */
  public FactOverrides {
    requireWithin("exposure", exposureSeconds, new Range(1e-5, 86_400, " s"));
    requireWithin("aperture", fNumber, new Range(0.3, 1000, ""));
    requireWithin("ISO", iso, new Range(1, 1e8, ""));
    requireWithin("focal length", focalLengthMm, new Range(0.5, 30_000, " mm"));
    requireWithin("35 mm equivalent", focalLength35Mm, new Range(0.5, 30_000, " mm"));
    requireWithin("pixel pitch", pixelPitchMicrons, new Range(0.2, 200, " \u00b5m"));
    requireWithin("temperature", ambientTemperatureC, new Range(-90, 70, " \u00b0C"));
    requireName("camera", cameraModel);
    requireName("lens", lensModel);
    clockShifts = Map.copyOf(clockShifts);
    new ClockShifts(clockShifts);
  }

  /** What a value may be; both ends belong to it. */
  private record Range(double least, double most, String unit) {}

  public static FactOverrides none() {
    return new FactOverrides(
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
        Map.of());
  }

  /**
   * The facts with the user's in their place, and the pixel pitch derived anew where a given focal
   * length or 35 mm equivalent makes that possible.
   */
  public ShotFacts apply(ShotFacts facts) {
    Optional<Fact<String>> camera = facts.cameraModel().or(() -> cameraModel.map(Fact::given));
    return new ShotFacts(
        facts.format(),
        facts.widthPx(),
        facts.heightPx(),
        orientation.orElse(facts.orientation()),
        facts.captureTime().map(time -> shifted(time, camera.map(Fact::value))),
        given(exposureSeconds, facts.exposureSeconds()),
        given(fNumber, facts.fNumber()),
        given(iso, facts.iso()),
        given(focalLengthMm, facts.focalLengthMm()),
        given(focalLength35Mm, facts.focalLength35Mm()),
        pitch(facts),
        given(ambientTemperatureC, facts.ambientTemperatureC()),
        camera,
        given(lensModel, facts.lensModel()),
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

  private static <T> Optional<Fact<T>> given(Optional<T> option, Optional<Fact<T>> own) {
    return option.map(Fact::given).or(() -> own);
  }

  private static void requireWithin(String name, Optional<Double> value, Range range) {
    if (value.isPresent() && !(value.get() >= range.least() && value.get() <= range.most())) {
      throw new IllegalArgumentException(
          name
              + " must be "
              + plain(range.least())
              + " to "
              + plain(range.most())
              + range.unit()
              + ", was "
              + plain(value.get()));
    }
  }

  private static String plain(double value) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString()
        : Double.toString(value);
  }

  private static void requireName(String what, Optional<String> name) {
    if (name.isPresent() && name.get().isBlank()) {
      throw new IllegalArgumentException(what + " must have a name, was blank");
    }
  }
}
