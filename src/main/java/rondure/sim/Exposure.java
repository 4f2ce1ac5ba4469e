package rondure.sim;

import java.util.ArrayList;
import java.util.List;

/**
 * One exposure of the night.
 *
 * @param number from 1
 * @param startSeconds since the first exposure began
 * @param nominalSeconds the time the camera names
 * @param openSeconds the time the shutter was open
 * @param iso sensitivity
 * @param fNumber aperture
 * @param focusMicrons focus error on the axis, at the sensor
 */
record Exposure(
    int number,
    double startSeconds,
    double nominalSeconds,
    double openSeconds,
    double iso,
    double fNumber,
    double focusMicrons) {

  double endSeconds() {
    return startSeconds + openSeconds;
  }

  double midSeconds() {
    return startSeconds + openSeconds / 2;
  }

  /** All exposures of a plan in order. */
  static List<Exposure> timetable(NightPlan plan) {
    List<Exposure> exposures = new ArrayList<>();
    double start = 0;
    for (ShotGroup group : plan.shots()) {
      start += group.pauseBeforeSeconds();
      double open = group.trueExposureSeconds().orElse(group.exposureSeconds());
      for (int i = 0; i < group.count(); i++) {
        double drift = TimePoint.at(plan.focusMicrons(), (start + open / 2) / 60, 0);
        exposures.add(
            new Exposure(
                exposures.size() + 1,
                start,
                group.exposureSeconds(),
                open,
                group.iso(),
                group.fNumber().orElse(plan.lens().fNumber()),
                drift + group.focusMicrons() + i * group.focusStepMicrons()));
        start += group.intervalSeconds();
      }
    }
    return exposures;
  }
}
