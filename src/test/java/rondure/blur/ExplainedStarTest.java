package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rondure.base.Moments;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/**
 * The star that a blur budget draws. Second moments of a convolution add (Flusser &amp; Suk 1998,
 * IEEE Trans. PAMI 20, 590: central moments of a convolution; from memory).
 */
class ExplainedStarTest {
  private static final int SIDE = 65;
  private static final int SAMPLES = 3;
  private static final StarBlur.Disc NO_DISC = new StarBlur.Disc(0, 0, 0);
  private static final Moments NONE = Moments.round(0);
  private static final StarBlur.Motion STILL = new StarBlur.Motion(NONE, NONE);

  /** As many stars as make an average that smooths over one grid step. */
  private static AverageStar average(DoubleBinaryOperator light) {
    float[] values = new float[SIDE * SIDE];
    double peak = 0;
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 0; i < values.length; i++) {
        double x = (i % SIDE - SIDE / 2) / (double) SAMPLES;
        double y = (i / SIDE - SIDE / 2) / (double) SAMPLES;
        double value = light.applyAsDouble(x, y);
        peak = Math.max(peak, value);
        values[i] = (float) (value / peak);
      }
    }
    return new AverageStar(AverageStar.Zone.WHOLE, 1000, SAMPLES, new Stamp(SIDE, values));
  }

  private static StarBlur gaussianCore(StarBlur.Disc disc, Moments coma, StarBlur.Motion motion) {
    return new StarBlur(new StarBlur.Core(0.9, 1), disc, coma, motion, StarBlur.Glow.NONE);
  }

  static Stream<StarBlur> blurs() {
    Moments line = Moments.line(5, 0.6);
    Moments swing = Moments.ofAxes(1.5, 0.2, 2.2);
    return Stream.of(
        gaussianCore(NO_DISC, NONE, STILL),
        gaussianCore(new StarBlur.Disc(4, 6, 0.4), NONE, STILL),
        gaussianCore(NO_DISC, NONE, new StarBlur.Motion(line, NONE)),
        gaussianCore(NO_DISC, Moments.ofAxes(0.9, 0.3, 1), new StarBlur.Motion(NONE, swing)),
        gaussianCore(
            new StarBlur.Disc(3, 5, 2),
            Moments.ofAxes(0.6, 0.2, 2),
            new StarBlur.Motion(line, swing)));
  }

  /** The average's own smoothing, a box of a third of a pixel, adds its (1/3)²/12. */
  @ParameterizedTest
  @MethodSource("blurs")
  void secondMomentsOfAllPartsAddUp(StarBlur blur) {
    AverageStar any = average((x, y) -> Math.exp(-(x * x + y * y) / 2));
    Moments drawn = moments(ExplainedStar.of(any, List.of(blur)).explained());
    Moments sum = blur.moments().plus(Moments.round(1 / 9.0 / 12));
    assertEquals(sum.xxPx2(), drawn.xxPx2(), 0.01 * sum.meanPx2());
    assertEquals(sum.xyPx2(), drawn.xyPx2(), 0.01 * sum.meanPx2());
    assertEquals(sum.yyPx2(), drawn.yyPx2(), 0.01 * sum.meanPx2());
  }

  private static Moments moments(AverageStar star) {
    double light = 0;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int i = 0; i < SIDE * SIDE; i++) {
      double x = (i % SIDE - SIDE / 2) / (double) SAMPLES;
      double y = (i / SIDE - SIDE / 2) / (double) SAMPLES;
      double value = star.stamp().at(i % SIDE, i / SIDE);
      light += value;
      xx += value * x * x;
      xy += value * x * y;
      yy += value * y * y;
    }
    return new Moments(xx / light, xy / light, yy / light);
  }

  /** A Gaussian along an even line: [Φ((u + h)/σ) − Φ((u − h)/σ)]/2h across the line's ends. */
  @Test
  void aTrailedGaussianLeavesNothing() {
    double length = 5;
    double sigma = Math.sqrt(0.9);
    DoubleBinaryOperator seen =
        (x, y) -> {
          double sum = 0;
          for (int i = 0; i < 400; i++) {
            double at = x - length * ((i + 0.5) / 400 - 0.5);
            sum += Math.exp(-at * at / (2 * sigma * sigma));
          }
          return sum * Math.exp(-y * y / (2 * sigma * sigma));
        };
    StarBlur blur = gaussianCore(NO_DISC, NONE, new StarBlur.Motion(Moments.line(length, 0), NONE));
    ExplainedStar star = ExplainedStar.of(average(seen), List.of(blur));
    assertTrue(star.leftShare() < 0.01, "left " + star.leftShare());
    StarBlur turned =
        gaussianCore(NO_DISC, NONE, new StarBlur.Motion(Moments.line(length, 1.5), NONE));
    double wrong = ExplainedStar.of(average(seen), List.of(turned)).leftShare();
    assertTrue(wrong > 0.1, "another direction leaves " + wrong);
  }

  /** Points thrown from the disc and the core, counted on the grid: a brute force convolution. */
  @Test
  void aSimulatedStarOutOfFocusLeavesLittleAndAnotherDiscMuch() {
    double diameter = 6;
    float[] counted = new float[SIDE * SIDE];
    Random random = new Random(7);
    for (int i = 0; i < 3_000_000; i++) {
      double radius = diameter / 2 * Math.sqrt(random.nextDouble());
      double angle = 2 * Math.PI * random.nextDouble();
      double sigma = Math.sqrt(0.9);
      double x = radius * Math.cos(angle) + sigma * random.nextGaussian();
      double y = radius * Math.sin(angle) + sigma * random.nextGaussian();
      int column = (int) Math.rint(SAMPLES * x) + SIDE / 2;
      int row = (int) Math.rint(SAMPLES * y) + SIDE / 2;
      if (column >= 0 && column < SIDE && row >= 0 && row < SIDE) {
        counted[row * SIDE + column]++;
      }
    }
    AverageStar seen =
        average(
            (x, y) ->
                counted[
                    ((int) Math.rint(SAMPLES * y) + SIDE / 2) * SIDE
                        + (int) Math.rint(SAMPLES * x)
                        + SIDE / 2]);
    double right = left(seen, diameter);
    assertTrue(right < 0.03, "left " + right);
    assertTrue(left(seen, 4) > 2 * right, "a smaller disc leaves " + left(seen, 4));
    assertTrue(left(seen, 8) > 2 * right, "a larger disc leaves " + left(seen, 8));
  }

  private static double left(AverageStar seen, double discPx) {
    StarBlur blur = gaussianCore(new StarBlur.Disc(discPx, discPx, 0), NONE, STILL);
    return ExplainedStar.of(seen, List.of(blur)).leftShare();
  }
}
