package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.FieldShape;
import rondure.blur.SceneReference;
import rondure.blur.Verdict;
import rondure.stars.Star;
import rondure.testing.Fields;

/** Grades: relative to the scene's sharpest frames, absolute by the uses that are left. */
class GradeRuleTest {
  private final GradeRule rule = new GradeRule(NightSettings.defaults());

  private static FieldShape round(double fwhmPx) {
    double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
    List<Star> stars =
        java.util.stream.IntStream.range(0, 40)
            .mapToObj(i -> Fields.star(37.0 * i, 29.0 * i, Moments.round(sigma * sigma), 0.02))
            .toList();
    return FieldShape.of(Fields.field(1500, 1200, stars, List.of()));
  }

  private static SceneReference scene(FieldShape shape, int frames) {
    SceneReference.Member member = new SceneReference.Member(shape, Optional.empty());
    return SceneReference.of(java.util.Collections.nCopies(frames, member));
  }

  private static Verdict verdict(Cause cause, Evidence.Kind... seen) {
    Map<Cause, Double> map = new EnumMap<>(Cause.class);
    Arrays.stream(Cause.values()).forEach(c -> map.put(c, c == cause ? 0.9 : 0.02));
    return Verdict.of(map, Arrays.stream(seen).map(kind -> new Evidence(kind, Map.of())).toList());
  }

  private Graded grade(double ratio, Verdict verdict, OutputUse use) {
    FieldShape sharpest = round(2.2);
    SceneReference reference = scene(sharpest, 5);
    return rule.grade(round(2.2 * ratio), reference, verdict, new Usefulness(use, 1000, 2048));
  }

  private boolean keeps(double fwhmPx, int frames, Verdict verdict) {
    FieldShape shape = round(fwhmPx);
    Usefulness use = new Usefulness(OutputUse.FULL_SIZE, 1500, 750);
    return rule.grade(shape, scene(shape, frames), verdict, use).grade() == Grade.KEEP;
  }

  @Test
  void aSharpFrameIsKept() {
    assertTrue(keeps(2.3, 5, verdict(Cause.NONE)));
    assertTrue(keeps(2.3, 1, verdict(Cause.NONE)));
    assertTrue(keeps(2.8, 5, verdict(Cause.FOCUS)), "a little out of focus, beside sharper ones");
  }

  @Test
  void aWiderFrameWantsACloserLookAndAMuchWiderOneIsSetAside() {
    Graded little = grade(1.4, verdict(Cause.FOCUS), OutputUse.FULL_SIZE);
    assertEquals(Grade.LOOK_CLOSER, little.grade());
    assertEquals(GradeReason.WIDER, little.why().get(0).reason());
    assertEquals(1.4, little.why().get(0).value().orElseThrow(), 1e-6);
    assertEquals(1.25, little.why().get(0).limit().orElseThrow());
    assertEquals(Grade.SET_ASIDE, grade(1.7, verdict(Cause.FOCUS), OutputUse.FULL_SIZE).grade());
  }

  @Test
  void aFrameWithoutAUseIsSetAsideHoweverGoodItIsForTonight() {
    Graded graded = grade(1.0, verdict(Cause.NONE), OutputUse.NONE);
    assertEquals(Grade.SET_ASIDE, graded.grade());
    assertEquals(GradeReason.NO_USE, graded.why().get(0).reason());
    assertEquals(2048, graded.why().get(0).limit().orElseThrow());
  }

  @Test
  void aHazyFrameWantsACloserLook() {
    Graded graded = grade(1.0, verdict(Cause.HAZE), OutputUse.FULL_SIZE);
    assertEquals(Grade.LOOK_CLOSER, graded.grade());
    assertEquals(GradeReason.HAZE, graded.why().get(0).reason());
  }

  @Test
  void aDoubleImageIsSetAside() {
    Verdict twice = verdict(Cause.TRIPOD, Evidence.Kind.DOUBLE_IMAGE);
    assertEquals(Grade.SET_ASIDE, grade(1.0, twice, OutputUse.FULL_SIZE).grade());
  }

  @Test
  void aWholeSetOutOfFocusHasNothingToKeep() {
    assertFalse(keeps(10, 4, verdict(Cause.FOCUS, Evidence.Kind.FLAT_TOPPED)));
    assertFalse(keeps(4.5, 4, verdict(Cause.FOCUS, Evidence.Kind.FLAT_TOPPED)));
    assertFalse(keeps(5.2, 4, verdict(Cause.FOCUS)));
    assertFalse(keeps(4, 1, verdict(Cause.FOCUS)), "nothing to compare with");
  }
}
