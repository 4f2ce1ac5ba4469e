package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.blur.AttributionSettings;
import rondure.blur.Cause;
import rondure.blur.SceneAttribution;

/**
 * Lenses soft at the edges, drawn for development with seeds of their own, without pixels: made
 * star shapes with the noise of measuring.
 */
@Tag("thorough")
class LensNightsTest {
  private static final long FIRST_SEED = 600_000;
  private static final int ROUNDS = 8;
  private static final List<Trouble> TROUBLES =
      List.of(Trouble.TILT, Trouble.COMA, Trouble.ASTIGMATISM, Trouble.CALM);

  private static List<Scored> scored() {
    SceneAttribution attribution = new SceneAttribution(AttributionSettings.defaults());
    List<MeasuredNight> nights = new ArrayList<>();
    for (int round = 0; round < ROUNDS; round++) {
      for (Trouble trouble : TROUBLES) {
        long seed = FIRST_SEED + 100L * round + trouble.ordinal();
        nights.add(TruthNight.of(new NightDraw(seed, trouble).drawn().plan()));
      }
    }
    return Evaluation.score(nights, View.WHOLE, attribution);
  }

  private static long count(List<Scored> scored, Scored.Result result) {
    return scored.stream().filter(s -> s.result() == result).count();
  }

  @Test
  void clearLensFramesAreNamedAndSharpOnesAreNot() {
    List<Scored> all = scored();
    List<Scored> lens =
        all.stream()
            .filter(s -> s.answer().kind() == FrameAnswer.Kind.CLEAR)
            .filter(s -> s.answer().cause() == Cause.LENS)
            .toList();
    List<Scored> sharp =
        all.stream().filter(s -> s.answer().kind() == FrameAnswer.Kind.SHARP).toList();
    String table = new ScoreTable(all).kinds() + new ScoreTable(all).failures();
    System.out.println(table);
    assertTrue(lens.size() >= 80 && sharp.size() >= 40, table);
    assertTrue(count(lens, Scored.Result.RIGHT) >= 0.95 * lens.size(), table);
    assertTrue(count(sharp, Scored.Result.WRONG) <= 0.01 * sharp.size(), table);
  }
}
