package rondure.night;

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

/** A frame as tight as its scene's tightest and round is kept, unless that says nothing. */
class KeepRuleTest {
  private final KeepRule rule = new KeepRule(NightSettings.defaults());

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

  private boolean keeps(double fwhmPx, int frames, Verdict verdict) {
    FieldShape shape = round(fwhmPx);
    return rule.keeps(shape, scene(shape, frames), verdict);
  }

  @Test
  void aSharpFrameIsKept() {
    assertTrue(keeps(2.3, 5, verdict(Cause.NONE)));
    assertTrue(keeps(2.3, 1, verdict(Cause.NONE)));
    assertTrue(keeps(2.8, 5, verdict(Cause.FOCUS)), "a little out of focus, beside sharper ones");
  }

  @Test
  void aDoubleImageIsNeverKept() {
    assertFalse(keeps(2.3, 5, verdict(Cause.TRIPOD, Evidence.Kind.DOUBLE_IMAGE)));
  }

  @Test
  void aWholeSetOutOfFocusHasNothingToKeep() {
    assertFalse(keeps(10, 4, verdict(Cause.FOCUS, Evidence.Kind.FLAT_TOPPED)));
    assertFalse(keeps(4.5, 4, verdict(Cause.FOCUS, Evidence.Kind.FLAT_TOPPED)));
    assertFalse(keeps(5.2, 4, verdict(Cause.FOCUS)));
    assertFalse(keeps(4, 1, verdict(Cause.FOCUS)), "nothing to compare with");
  }
}
