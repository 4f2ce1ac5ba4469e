package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** The level of a field's second moment, and where it is least. */
class FieldLevelsTest {
  private static final int WIDTH = 3000;
  private static final int HEIGHT = 2000;
  private static final double TILT = 1.5;
  private static final double CURVATURE = 1.8;

  /** A disc of d + tilt x + curvature r² px adds its square over 16; x and r in half diagonals. */
  private static StarField field(double discPx, List<double[]> places) {
    List<Star> stars = new ArrayList<>();
    for (double[] place : places) {
      double disc = discPx + offset(place);
      stars.add(Fields.star(place[0], place[1], Moments.round(1 + disc * disc / 16), 0.02));
    }
    return Fields.field(WIDTH, HEIGHT, stars, List.of());
  }

  private static double offset(double[] place) {
    double half = Math.hypot(WIDTH, HEIGHT) / 2;
    double x = (place[0] - (WIDTH - 1) / 2.0) / half;
    double y = (place[1] - (HEIGHT - 1) / 2.0) / half;
    return TILT * x + CURVATURE * (x * x + y * y);
  }

  private static double minimum(List<double[]> places) {
    double[] discs = {-4, -3, -2, -1, 0, 1, 2, 3};
    List<StarField> fields = new ArrayList<>();
    for (double disc : discs) {
      fields.add(field(disc, places));
    }
    double[] px2 = FieldLevels.of(fields).px2().stream().mapToDouble(level -> level).toArray();
    double[] sigma = new double[discs.length];
    java.util.Arrays.fill(sigma, 0.01);
    return Parabola.fit(discs, px2, sigma).orElseThrow().at();
  }

  private static List<double[]> scattered(long seed, int stars, double heightPx) {
    Random random = new Random(seed);
    List<double[]> places = new ArrayList<>();
    for (int i = 0; i < stars; i++) {
      places.add(new double[] {WIDTH * random.nextDouble(), heightPx * random.nextDouble()});
    }
    return places;
  }

  /**
   * Closed form: mean (d + g)² = (d + mean g)² + var g is least at d = - mean g, and r² averages to
   * a third of its corner value over any rectangle.
   */
  @Test
  void theLevelIsLeastWhereTheMeanSignedDiscIsNone() {
    List<double[]> grid = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      for (int k = 0; k < 40; k++) {
        grid.add(new double[] {50 * i + 24.5, 50 * k + 24.5});
      }
    }
    assertEquals(-CURVATURE / 3, minimum(grid), 2e-3);
  }

  /** The plain mean over the stars would put it where their own mean disc is none. */
  @Test
  void fewStarsThatSampleTheFieldUnevenlyTellTheSame() {
    double square = 0;
    double plainSquare = 0;
    for (int seed = 1; seed <= 20; seed++) {
      List<double[]> places = scattered(seed, 40, HEIGHT);
      square += Math.pow(minimum(places) + CURVATURE / 3, 2);
      double mean = places.stream().mapToDouble(FieldLevelsTest::offset).average().orElseThrow();
      plainSquare += Math.pow(mean - CURVATURE / 3, 2);
    }
    assertTrue(square < plainSquare / 25, "levels " + square + ", mean of stars " + plainSquare);
  }

  /** Sky in the upper half only: its own mean counts, r² there being a third as well. */
  @Test
  void theFieldIsWhereStarsAre() {
    assertEquals(-CURVATURE / 3, minimum(scattered(7, 400, HEIGHT / 2.0)), 0.03);
  }

  @Test
  void theErrorIsThatOfTheMeanStar() {
    StarField field = field(0, scattered(3, 400, HEIGHT));
    double error = FieldLevels.of(List.of(field)).errorPx2().get(0);
    // Mean of both axes, each 0.02 px²: 0.02 / √2 / √400, and a little for the fitted terms.
    assertEquals(0.02 / Math.sqrt(2) / 20, error, 0.0002);
  }

  @Test
  void tooFewStarsGiveTheirMean() {
    StarField field =
        Fields.field(
            WIDTH,
            HEIGHT,
            List.of(
                Fields.star(10, 10, Moments.round(1.0), 0.02),
                Fields.star(2900, 1900, Moments.round(1.2), 0.02)),
            List.of());
    assertEquals(1.1, FieldLevels.of(List.of(field)).px2().get(0), 1e-9);
  }
}
