package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** Scenes in which some frames tell their exposure and others do not. */
class SceneReferenceTest {
  private static final double DIRECTION_RAD = 0.4;

  private static StarField trailed(double lengthPx) {
    Random random = new Random(3);
    Moments shape = Moments.round(1).plus(Moments.line(lengthPx, DIRECTION_RAD));
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      double scale = 1 + 0.04 * random.nextGaussian();
      double x = random.nextDouble() * 6000;
      stars.add(Fields.star(x, random.nextDouble() * 4000, shape.times(scale), 0.04));
    }
    return Fields.field(6000, 4000, stars, List.of());
  }

  private static SceneReference scene(int told, int silent) {
    List<SceneReference.Member> members = new ArrayList<>();
    for (int i = 0; i < told + silent; i++) {
      FieldShape shape = FieldShape.of(trailed(1));
      members.add(new SceneReference.Member(shape, i < told ? Optional.of(4.0) : Optional.empty()));
    }
    return SceneReference.of(members);
  }

  @Test
  void framesWithoutExposureDoNotHideWhatTheOthersShare() {
    assertEquals(scene(6, 0).smear(), scene(6, 3).smear());
    assertTrue(scene(6, 3).smear().orElseThrow().exposuresKnown());
    assertFalse(scene(0, 6).smear().orElseThrow().exposuresKnown());
    assertEquals(Optional.empty(), scene(4, 4).smear());
  }

  /** Four times the exposure draws four times the trail: without exposure nobody can tell. */
  @Test
  void aLongerSmearWithoutExposureIsSkyOrTripod() {
    FrameEvidence silent =
        new FrameEvidence(
            trailed(4),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            false,
            scene(6, 2));
    Verdict verdict = new OneFrameAttribution(AttributionSettings.defaults()).judge(silent);
    assertEquals(Optional.empty(), verdict.cause(), verdict.toString());
    assertEquals(
        EnumSet.of(Cause.TRAILING, Cause.TRIPOD), EnumSet.copyOf(verdict.undecidedBetween()));
  }
}
