package rondure.sim;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Exposures taken with one setting, one after the other.
 *
 * @param count how many
 * @param pauseBeforeSeconds extra wait before the first of them
 * @param exposureSeconds the time the camera names
 * @param trueExposureSeconds the time the shutter was open, when it differs (30 s is often 32 s)
 * @param intervalSeconds from one start to the next
 * @param iso sensitivity
 * @param fNumber aperture, when it differs from the lens's
 * @param focusMicrons focus error added to the night's, at the sensor
 * @param focusStepMicrons further focus error added with each exposure (a focus test series)
 */
public record ShotGroup(
    int count,
    double pauseBeforeSeconds,
    double exposureSeconds,
    OptionalDouble trueExposureSeconds,
    double intervalSeconds,
    double iso,
    OptionalDouble fNumber,
    double focusMicrons,
    double focusStepMicrons) {

  public ShotGroup {
    Checks.within("count", count, 1, 100000);
    Checks.notNegative("pauseBeforeSeconds", pauseBeforeSeconds);
    Checks.within("exposureSeconds", exposureSeconds, 1e-5, 20000);
    trueExposureSeconds = Objects.requireNonNullElse(trueExposureSeconds, OptionalDouble.empty());
    double open = trueExposureSeconds.orElse(exposureSeconds);
    Checks.within("trueExposureSeconds", open, 1e-5, 20000);
    if (!(intervalSeconds >= open)) {
      throw new IllegalArgumentException(
          "intervalSeconds must be >= the exposure of " + open + " s, was " + intervalSeconds);
    }
    Checks.positive("iso", iso);
    fNumber = Objects.requireNonNullElse(fNumber, OptionalDouble.empty());
    Checks.positive("fNumber", fNumber.orElse(1));
    Checks.finite("focusMicrons", focusMicrons);
    Checks.finite("focusStepMicrons", focusStepMicrons);
  }

  /** A plain group: no pause, no focus steps, exposure as named, the lens's own aperture. */
  public static ShotGroup plain(
      int count, double exposureSeconds, double intervalSeconds, double iso) {
    return new ShotGroup(
        count,
        0,
        exposureSeconds,
        OptionalDouble.empty(),
        intervalSeconds,
        iso,
        OptionalDouble.empty(),
        0,
        0);
  }
}
