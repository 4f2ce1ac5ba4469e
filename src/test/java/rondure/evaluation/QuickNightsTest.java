package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rondure.blur.AttributionSettings;
import rondure.blur.SceneAttribution;

/** A few nights without pixels in every build: true shapes with the noise of measuring. */
class QuickNightsTest {
  private static final Set<Trouble> TROUBLES =
      Set.of(Trouble.TRAILING, Trouble.FOCUS_DRIFT, Trouble.GUSTS, Trouble.TILT);

  private static List<Scored> scored() {
    SceneAttribution attribution = new SceneAttribution(AttributionSettings.defaults());
    List<MeasuredNight> nights =
        TROUBLES.stream()
            .sorted()
            .map(t -> new NightDraw(7_000_000 + t.ordinal(), t).drawn().plan())
            .map(TruthNight::of)
            .toList();
    return Evaluation.score(nights, View.WHOLE, attribution);
  }

  @Test
  void nightsOfOneCauseAreCalledByThatCause() {
    List<Scored> scored = scored();
    List<Scored> clear =
        scored.stream().filter(s -> s.answer().kind() == FrameAnswer.Kind.CLEAR).toList();
    assertTrue(clear.size() >= 8, clear.size() + " clear frames");
    for (Scored one : clear) {
      assertEquals(Scored.Result.RIGHT, one.result(), ScoreTable.line(one));
    }
    for (Scored one : scored) {
      boolean sharp = one.answer().kind() == FrameAnswer.Kind.SHARP;
      assertTrue(!sharp || one.result() != Scored.Result.WRONG, ScoreTable.line(one));
    }
  }
}
