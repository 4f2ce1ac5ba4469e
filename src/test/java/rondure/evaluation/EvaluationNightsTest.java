package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.blur.AttributionSettings;
import rondure.blur.SceneAttribution;

/**
 * The causes of whole simulated nights that nothing was tuned or calibrated by. Writes what {@code
 * docs/accuracy.md} tells: {@code target/evaluation/test.txt} and the reliability diagram.
 */
@Tag("thorough")
class EvaluationNightsTest {
  private static final Path OUT = Path.of("target", "evaluation");
  private static final double CLEAR_RIGHT = 0.8;
  private static final double SHARP_BLAMED = 0.01;
  private static final double WITHIN = 0.07;
  private static final int FEWEST_IN_BIN = 30;
  private static final double BRIER = 0.25;
  private static final double DECIDED = 0.8;

  @Test
  void causesOfWholeNightsAreRightAndSharpFramesAreNotBlamed() throws IOException {
    SceneAttribution attribution = new SceneAttribution(AttributionSettings.defaults());
    Map<View, List<Scored>> views = Evaluation.score(NightSet.TEST.nights(), attribution);
    List<Scored> all = views.values().stream().flatMap(List::stream).toList();
    String text =
        Evaluation.text(views)
            + "== all views\n"
            + new Reliability(all).table()
            + "== all views, haze that no frame shown is clear of counted too\n"
            + new Reliability(all, true).table();
    Files.createDirectories(OUT);
    Files.writeString(OUT.resolve("test.txt"), text);
    Files.writeString(
        OUT.resolve("reliability.svg"),
        ReliabilityChart.svg("Verdicts on test nights, all views", new Reliability(all)));
    holdsWhatIsTabled(views.get(View.WHOLE));
    isAsSureAsItIsRight(new Reliability(all, true));
    Reliability tellable = new Reliability(all);
    assertTrue(tellable.brier() <= BRIER, tellable.table());
    assertTrue(tellable.decided() >= DECIDED, tellable.table());
  }

  /** No worse than tabled in docs/accuracy.md, which says what was aimed at and what is missed. */
  private static void holdsWhatIsTabled(List<Scored> whole) {
    double clear = share(whole, FrameAnswer.Kind.CLEAR, Scored.Result.RIGHT);
    assertTrue(clear >= CLEAR_RIGHT, clear + " of clear frames right");
    double blamed = share(whole, FrameAnswer.Kind.SHARP, Scored.Result.WRONG);
    assertTrue(blamed <= SHARP_BLAMED, blamed + " of sharp frames blamed");
  }

  /** Bins of thirty frames or more; where nights are few their scatter counts as well. */
  private static void isAsSureAsItIsRight(Reliability reliability) {
    for (Reliability.Bin bin : reliability.bins()) {
      double off = Math.abs(bin.confidence() - bin.right());
      boolean few = bin.frames() < FEWEST_IN_BIN;
      assertTrue(few || off <= Math.max(WITHIN, 2 * bin.error()), reliability.table());
    }
  }

  private static double share(List<Scored> scored, FrameAnswer.Kind kind, Scored.Result result) {
    List<Scored> ofKind = scored.stream().filter(s -> s.answer().kind() == kind).toList();
    return ofKind.stream().filter(s -> s.result() == result).count() / (double) ofKind.size();
  }
}
