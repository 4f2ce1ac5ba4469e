package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;
import rondure.testing.SimNight;

/**
 * Knocks rendered from a camera's turn by the simulator, whose truth the detector never sees: the
 * offset in px at the frame's centre and the share of the exposure that had passed.
 */
class KnockGridTest {
  private static final double[] OFFSETS_PX = {3, 4, 5, 6, 8, 12, 20};
  private static final double[] SHARES = {0.2, 0.35, 0.5, 0.65, 0.8};

  /** From here on the two images of a star of 2.3 px are always found apart. */
  private static final double APART_FROM_PX = 5;

  private static StarField knocked(int seed, double offsetPx, double share, double directionDeg) {
    double dx = offsetPx * Math.cos(Math.toRadians(directionDeg));
    double dy = offsetPx * Math.sin(Math.toRadians(directionDeg));
    String knock =
        String.format(
            Locale.ROOT,
            "[{\"kind\": \"knock\", \"frame\": 1, \"atShare\": %.3f, \"shiftXPx\": %.3f,"
                + " \"shiftYPx\": %.3f, \"ringPx\": %.2f, \"ringHz\": 6, \"ringDecaySeconds\":"
                + " 0.4}]",
            share,
            dx,
            dy,
            0.3 * offsetPx);
    return SimNight.measure(
        SimNight.plan("seed", Integer.toString(seed), "events", knock, "camera.widthPx", "1000"),
        1);
  }

  private static StarField calm(int seed, double starsPerSquareDegree) {
    return SimNight.measure(
        SimNight.plan(
            "seed",
            Integer.toString(seed),
            "stars.starsPerSquareDegree",
            Double.toString(starsPerSquareDegree),
            "camera.widthPx",
            "1000"),
        1);
  }

  @ParameterizedTest
  @CsvSource({"6, 0.35, 20", "9, 0.5, 100", "9, 0.8, 250", "14, 0.25, 0", "20, 0.6, 160"})
  void aKnockWithTwoClearImagesIsFoundWithItsOffset(
      double offsetPx, double share, double directionDeg) {
    DoubleImage found = DoubleImage.of(knocked(3, offsetPx, share, directionDeg)).orElseThrow();
    // Median over the field of a wide lens: corners move up to half as far again.
    assertTrue(
        found.offsetPx() > 0.95 * offsetPx && found.offsetPx() < 1.35 * offsetPx, found.toString());
    assertEquals(Math.min(share, 1 - share), found.fainterShare(), 0.06, found.toString());
    double off = Math.abs(Math.toDegrees(found.angleRad()) - directionDeg) % 180;
    assertTrue(Math.min(off, 180 - off) < 8, found.toString());
  }

  @ParameterizedTest
  @CsvSource({"2.2", "12", "50"})
  void aCalmSkyIsNotDoubleHoweverCrowded(double starsPerSquareDegree) {
    assertEquals(Optional.empty(), DoubleImage.of(calm(5, starsPerSquareDegree)));
  }

  /** A hand that leaves a faint path of 6 to 10 px for the first quarter of the exposure. */
  private static StarField pressed(int seed, double amplitudePx, double decaySeconds) {
    String press =
        String.format(
            Locale.ROOT,
            "[{\"kind\": \"handPress\", \"firstFrame\": 1, \"lastFrame\": 1, \"amplitudePx\": %.2f,"
                + " \"frequencyHz\": 4, \"decaySeconds\": %.2f}]",
            amplitudePx,
            decaySeconds);
    return SimNight.measure(
        SimNight.plan("seed", Integer.toString(seed), "events", press, "camera.widthPx", "1000"),
        1);
  }

  private static Verdict judged(StarField field, StarField... others) {
    List<SceneReference.Member> members = new ArrayList<>();
    members.add(new SceneReference.Member(FieldShape.of(field), Optional.of(13.0)));
    for (StarField other : others) {
      members.add(new SceneReference.Member(FieldShape.of(other), Optional.of(13.0)));
    }
    return new OneFrameAttribution(AttributionSettings.defaults())
        .judge(
            new FrameEvidence(
                field,
                Optional.of(13.0),
                Optional.of(1000.0),
                Optional.empty(),
                Optional.empty(),
                false,
                SceneReference.of(members)));
  }

  @Test
  void aHandOnTheShutterLeavesAFaintTailAndIsTheTripods() {
    StarField calm = calm(5, 2.2);
    Verdict verdict = judged(pressed(1, 10, 3), calm, calm(6, 2.2));
    assertEquals(Optional.of(Cause.TRIPOD), verdict.cause(), verdict.toString());
    assertTrue(verdict.saw(Evidence.Kind.FAINT_TAIL), verdict.toString());
    assertEquals(Optional.of(Cause.NONE), judged(calm, calm(6, 2.2)).cause());
    assertFalse(judged(calm, calm(6, 2.2)).saw(Evidence.Kind.FAINT_TAIL));
  }

  @Test
  void aKnockedFrameIsTheTripodsThoughEachImageIsSharp() {
    Verdict verdict = judged(knocked(3, 9, 0.4, 60), calm(5, 2.2));
    assertEquals(Optional.of(Cause.TRIPOD), verdict.cause(), verdict.toString());
    assertTrue(verdict.saw(Evidence.Kind.DOUBLE_IMAGE), verdict.toString());
    assertTrue(verdict.confidence() > 0.9, verdict.toString());
  }

  /** Every light on a lattice repeats one offset, yet nothing moved. */
  @Test
  void aRegularPatternIsNotADoubleImage() {
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < 400; i++) {
      stars.add(
          Fields.star(20 + 12 * (i % 20), 20 + 12 * (double) (i / 20), Moments.round(0.9), 0.02));
    }
    assertEquals(Optional.empty(), DoubleImage.of(Fields.field(300, 300, stars, List.of())));
  }

  @Test
  @Tag("thorough")
  void detectionAndFalseRatesOverTheGrid() {
    StringBuilder table = new StringBuilder();
    int clear = 0;
    int clearFound = 0;
    for (double offset : OFFSETS_PX) {
      table.append(String.format(Locale.ROOT, "%4.0f px:", offset));
      for (double share : SHARES) {
        int found = 0;
        for (int seed = 1; seed <= 4; seed++) {
          found += DoubleImage.of(knocked(seed, offset, share, 97.0 * seed)).isPresent() ? 1 : 0;
        }
        table.append(String.format(Locale.ROOT, "  %.0f%%: %d/4", 100 * share, found));
        clear += offset >= APART_FROM_PX ? 4 : 0;
        clearFound += offset >= APART_FROM_PX ? found : 0;
      }
      table.append('\n');
    }
    int falseOnes = 0;
    for (int seed = 1; seed <= 10; seed++) {
      for (double density : new double[] {1, 2.2, 8, 25, 60}) {
        falseOnes += DoubleImage.of(calm(seed, density)).isPresent() ? 1 : 0;
      }
    }
    table.append(String.format(Locale.ROOT, "false: %d of 50%n", falseOnes));
    System.out.println(table);
    assertEquals(0, falseOnes, table.toString());
    assertTrue(clearFound >= 0.95 * clear, table.toString());
  }
}
