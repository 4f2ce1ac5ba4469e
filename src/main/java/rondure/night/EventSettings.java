package rondure.night;

/**
 * What counts as an event: sure enough, and large enough to matter.
 *
 * @param falseAlarmRate [1e-5] chance that one test of one quiet frame passes its limit, if noise
 *     is Gaussian: for shakes, levels of the focus, lost light and the sky's brightness. With the
 *     dozen kinds tested in each frame this is one false event in some 8,000 quiet frames. Jumps
 *     and steady turning are proven when frames are registered, at 5 and 4.5 σ. The judge of
 *     simulated nights holds the whole to at most one in 500; counts are in docs/accuracy.md
 * @param knockLeastPx [1] smallest jump of the camera
 * @param reAimShare [0.05] from this share of the frame's longer side a jump is deliberate
 * @param shakeWidening [1.12] least widening by the tripod
 * @param pauseRatio [2] a wait longer than this many times the usual one is a pause
 * @param droopPxPerMin [0.25] slowest droop
 * @param focusPerHour [0.1] least growth of the width by focus, a share an hour
 * @param focusStep [0.1] least step of the width by focus, a share
 * @param lossMag [0.25] least loss of light
 * @param brighterMag [0.4] least brightening of the sky
 */
public record EventSettings(
    double falseAlarmRate,
    double knockLeastPx,
    double reAimShare,
    double shakeWidening,
    double pauseRatio,
    double droopPxPerMin,
    double focusPerHour,
    double focusStep,
    double lossMag,
    double brighterMag) {

  public EventSettings {
    require("falseAlarmRate", falseAlarmRate > 0 && falseAlarmRate < 0.5, falseAlarmRate);
    require("knockLeastPx", knockLeastPx >= 0, knockLeastPx);
    require("reAimShare", reAimShare > 0, reAimShare);
    require("shakeWidening", shakeWidening >= 1, shakeWidening);
    require("pauseRatio", pauseRatio > 1, pauseRatio);
    require("droopPxPerMin", droopPxPerMin >= 0, droopPxPerMin);
    require("focusPerHour", focusPerHour >= 0, focusPerHour);
    require("focusStep", focusStep >= 0, focusStep);
    require("lossMag", lossMag > 0, lossMag);
    require("brighterMag", brighterMag > 0, brighterMag);
  }

  public static EventSettings defaults() {
    return new EventSettings(1e-5, 1, 0.05, 1.12, 2, 0.25, 0.1, 0.1, 0.25, 0.4);
  }

  private static void require(String name, boolean holds, double value) {
    if (!holds) {
      throw new IllegalArgumentException(name + " makes no sense: " + value);
    }
  }
}
