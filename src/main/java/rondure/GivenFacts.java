package rondure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.intake.ClockShift;
import rondure.intake.FactOverrides;
import rondure.report.ShownSetting;

/**
 * Facts that the user gives on the command line.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param iso sensitivity
 * @param focalLengthMm actual focal length
 * @param focalLength35Mm 35 mm equivalent focal length
 * @param pixelPitchMicrons distance of pixels
 * @param ambientTemperatureC air temperature
 * @param orientation EXIF value 1 to 8: how the stored pictures are turned for display
 * @param camera maker and model of files that name none
 * @param lens lens
 * @param clockShifts what to add to cameras' times, each CAMERA=±hh:mm:ss
 */
public record GivenFacts(
    Optional<Double> exposureSeconds,
    Optional<Double> fNumber,
    Optional<Double> iso,
    Optional<Double> focalLengthMm,
    Optional<Double> focalLength35Mm,
    Optional<Double> pixelPitchMicrons,
    Optional<Double> ambientTemperatureC,
    Optional<Integer> orientation,
    Optional<String> camera,
    Optional<String> lens,
    List<String> clockShifts) {

  /**
   * @throws IllegalArgumentException for people, when the orientation is none
   */
  public GivenFacts {
    clockShifts = List.copyOf(clockShifts);
    if (orientation.isPresent() && !(orientation.get() >= 1 && orientation.get() <= 8)) {
      throw new IllegalArgumentException("orientation must be 1 to 8, was " + orientation.get());
    }
  }

  /** Nothing given: the files' own facts are used. */
  public static GivenFacts none() {
    return new GivenFacts(
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
        List.of());
  }

  /**
   * The same, checked, in the words of the intake.
   *
   * @throws IllegalArgumentException for people, when a value makes no sense
   */
  FactOverrides overrides() {
    return new FactOverrides(
        exposureSeconds,
        fNumber,
        iso,
        focalLengthMm,
        focalLength35Mm,
        pixelPitchMicrons,
        ambientTemperatureC,
        orientation.map(Orientation::ofExif),
        camera.map(String::strip),
        lens.map(String::strip),
        ClockShift.parseAll(clockShifts));
  }

  /** A row for each given fact, for the settings that the report prints. */
  List<ShownSetting> shown() {
    List<ShownSetting> rows = new ArrayList<>();
    add(rows, "givenExposureSeconds", exposureSeconds, "Exposure time, s");
    add(rows, "givenFNumber", fNumber, "Aperture");
    add(rows, "givenIso", iso, "Sensitivity");
    add(rows, "givenFocalLengthMm", focalLengthMm, "Focal length, mm");
    add(rows, "givenFocalLength35Mm", focalLength35Mm, "35 mm equivalent focal length, mm");
    add(rows, "givenPixelPitchMicrons", pixelPitchMicrons, "Distance of pixels, µm");
    add(rows, "givenTemperatureC", ambientTemperatureC, "Air temperature, °C");
    add(rows, "givenOrientation", orientation, "Orientation of the pictures, EXIF value");
    add(rows, "givenCamera", camera, "Camera of files that name none");
    add(rows, "givenLens", lens, "Lens");
    Optional<String> shifts =
        clockShifts.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", clockShifts));
    add(rows, "givenClockShifts", shifts, "Moves the times of a camera");
    return rows;
  }

  private static void add(List<ShownSetting> rows, String name, Optional<?> value, String meaning) {
    value.ifPresent(
        given ->
            rows.add(
                new ShownSetting(
                    name, ShownSetting.spelled(given), meaning + "; as you gave it.")));
  }
}
