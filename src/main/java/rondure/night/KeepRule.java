package rondure.night;

import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.FieldShape;
import rondure.blur.SceneReference;
import rondure.blur.Verdict;

/**
 * Which frames to keep: about as tight as the scene's sharpest and round (common practice), as long
 * as that sharpest is sharp at all and every star is there once.
 */
final class KeepRule {
  private final NightSettings settings;

  KeepRule(NightSettings settings) {
    this.settings = settings;
  }

  boolean keeps(FieldShape shape, SceneReference scene, Verdict verdict) {
    boolean tight = shape.fwhmPx() <= settings.keepWidthRatio() * scene.sharpestFwhmPx();
    boolean round = shape.roundness() >= settings.keepRoundness();
    return tight && round && !isBarred(scene, verdict);
  }

  /** Two images of each star, or a frame out of focus with nothing sharp to compare it with. */
  private boolean isBarred(SceneReference scene, Verdict verdict) {
    boolean focus = verdict.cause().filter(cause -> cause == Cause.FOCUS).isPresent();
    boolean discs = verdict.saw(Evidence.Kind.FLAT_TOPPED);
    boolean wide = scene.coreFwhmPx() > settings.widestCorePx();
    boolean alone = scene.frames() == 1;
    return verdict.saw(Evidence.Kind.DOUBLE_IMAGE) || focus && (discs || wide || alone);
  }
}
