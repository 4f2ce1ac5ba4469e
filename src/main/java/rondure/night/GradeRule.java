package rondure.night;

import java.util.ArrayList;
import java.util.List;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.FieldShape;
import rondure.blur.SceneReference;
import rondure.blur.Verdict;

/**
 * What to do with a frame: relative to what this lens did tonight (the scene's sharpest tenth), and
 * absolute, by the uses that are left.
 *
 * <p><b>Set aside</b>: much wider than the sharpest or very oval, each star there twice, or no use
 * left. <b>Look closer</b>: a little wider or oval, dimmed by haze, or out of focus with nothing
 * sharp to compare it with. <b>Keep</b>: the others. All limits are common practice.
 */
final class GradeRule {
  private final NightSettings settings;
  private final GradeSettings limits;

  GradeRule(NightSettings settings) {
    this.settings = settings;
    this.limits = settings.grades();
  }

  Graded grade(FieldShape shape, SceneReference scene, Verdict verdict, Usefulness use) {
    double ratio = shape.fwhmPx() / scene.sharpestFwhmPx();
    List<Graded.Why> aside = new ArrayList<>();
    if (verdict.saw(Evidence.Kind.DOUBLE_IMAGE)) {
      aside.add(Graded.Why.of(GradeReason.DOUBLE_IMAGE));
    }
    addShape(aside, ratio, limits.asideWidthRatio(), shape.roundness(), limits.asideRoundness());
    if (use.largestUse() == OutputUse.NONE) {
      aside.add(Graded.Why.of(GradeReason.NO_USE, use.pointUpToWidthPx(), use.leastWidthPx()));
    }
    if (!aside.isEmpty()) {
      return new Graded(Grade.SET_ASIDE, aside);
    }
    List<Graded.Why> closer = new ArrayList<>();
    addShape(closer, ratio, limits.keepWidthRatio(), shape.roundness(), limits.keepRoundness());
    if (outOfFocus(scene, verdict)) {
      closer.add(
          Graded.Why.of(GradeReason.OUT_OF_FOCUS, scene.coreFwhmPx(), settings.widestCorePx()));
    }
    if (verdict.cause().filter(cause -> cause == Cause.HAZE).isPresent()) {
      closer.add(Graded.Why.of(GradeReason.HAZE));
    }
    return closer.isEmpty()
        ? new Graded(
            Grade.KEEP, List.of(Graded.Why.of(GradeReason.TIGHT, ratio, limits.keepWidthRatio())))
        : new Graded(Grade.LOOK_CLOSER, closer);
  }

  private static void addShape(
      List<Graded.Why> why, double ratio, double widest, double roundness, double leastRound) {
    if (ratio > widest) {
      why.add(Graded.Why.of(GradeReason.WIDER, ratio, widest));
    }
    if (roundness < leastRound) {
      why.add(Graded.Why.of(GradeReason.OVAL, roundness, leastRound));
    }
  }

  /** Out of focus and nothing sharp to compare it with. */
  private boolean outOfFocus(SceneReference scene, Verdict verdict) {
    boolean focus = verdict.cause().filter(cause -> cause == Cause.FOCUS).isPresent();
    boolean discs = verdict.saw(Evidence.Kind.FLAT_TOPPED);
    boolean wide = scene.coreFwhmPx() > settings.widestCorePx();
    return focus && (discs || wide || scene.frames() == 1);
  }
}
