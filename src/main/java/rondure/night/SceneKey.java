package rondure.night;

import java.util.Optional;
import rondure.intake.Fact;

/** What frames of one scene have in common. */
record SceneKey(
    int nightIndex,
    String cameraName,
    Optional<String> lens,
    Optional<Double> focalLengthMm,
    int widthPx,
    int heightPx) {

  static SceneKey of(Shot shot, int nightIndex) {
    int width = shot.exposure().widthPx();
    int height = shot.exposure().heightPx();
    // Zooms report steps of a tenth at best.
    Optional<Double> focal =
        shot.facts().focalLengthMm().map(Fact::value).map(mm -> Math.rint(mm * 10) / 10);
    return new SceneKey(
        nightIndex,
        shot.cameraName(),
        shot.facts().lens().map(String::strip),
        focal,
        width,
        height);
  }
}
