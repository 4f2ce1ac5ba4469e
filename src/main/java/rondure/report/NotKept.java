package rondure.report;

import java.util.Optional;
import rondure.blur.Evidence;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.NightSettings;
import rondure.night.Scene;
import rondure.report.picture.Mark;

/** Why a measured frame is not marked keep, where the rest of its entry does not say so. */
enum NotKept {
  WIDTH,
  ROUNDNESS,
  WIDTH_AND_ROUNDNESS,
  OUT_OF_FOCUS;

  private static final NightSettings RULE = NightSettings.defaults();

  static Optional<NotKept> why(NightFrame frame, Scene scene) {
    boolean twice = frame.verdict().filter(v -> v.saw(Evidence.Kind.DOUBLE_IMAGE)).isPresent();
    if (Ranking.isKeep(frame) || frame.shape().isEmpty() || twice) {
      return Optional.empty();
    }
    FrameShape shape = frame.shape().get();
    double sharpest = scene.sharpestFwhmPx().orElse(shape.fwhmPx());
    boolean wide = shape.fwhmPx() > RULE.keepWidthRatio() * sharpest;
    boolean oval = shape.roundness() < RULE.keepRoundness();
    if (!wide && !oval) {
      return Optional.of(OUT_OF_FOCUS);
    }
    NotKept why = wide && oval ? WIDTH_AND_ROUNDNESS : wide ? WIDTH : ROUNDNESS;
    boolean saidByCause = Mark.of(frame) != Mark.NONE;
    return saidByCause ? Optional.empty() : Optional.of(why);
  }
}
