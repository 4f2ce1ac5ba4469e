package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.Stamp;
import rondure.stars.AverageStar;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/**
 * Tails drawn by following a camera that swings, x = A e^(-t/τ) sin ωt, or a lens whose tails point
 * along the radius and grow as its square; the reader knows neither's path.
 */
class FaintTailTest {
  private static final int WIDTH = 1200;
  private static final int HEIGHT = 800;
  private static final int SIDE = 65;
  private static final int PER_PX = 4;
  private static final double SIGMA_PX = 1;
  private static final int MOMENTS_OF_TIME = 500;
  private static final double SWINGS = 25;

  /** Light of a swinging star over that of a still one, px from its middle. */
  private record Swing(double reachPx, double partOfTime, double angleRad) {
    void draw(double[] light, double weight) {
      for (int step = 0; step < MOMENTS_OF_TIME; step++) {
        double time = (step + 0.5) / MOMENTS_OF_TIME;
        double off = reachPx * Math.exp(-time / partOfTime) * Math.sin(2 * Math.PI * SWINGS * time);
        star(light, off * Math.cos(angleRad), off * Math.sin(angleRad), weight / MOMENTS_OF_TIME);
      }
    }

    /** A²τ(1 - e^(-2T/τ))/(4T) along the swing (decaying vibration): half of it is spin-2. */
    double spin2Px2() {
      return reachPx * reachPx * partOfTime * (1 - Math.exp(-2 / partOfTime)) / 8;
    }
  }

  private static void star(double[] light, double x, double y, double weight) {
    double[] columns = new double[SIDE];
    double[] rows = new double[SIDE];
    for (int i = 0; i < SIDE; i++) {
      double at = (i - SIDE / 2) / (double) PER_PX;
      columns[i] = Math.exp(-(at - x) * (at - x) / (2 * SIGMA_PX * SIGMA_PX));
      rows[i] = Math.exp(-(at - y) * (at - y) / (2 * SIGMA_PX * SIGMA_PX)) * weight;
    }
    for (int i = 0; i < light.length; i++) {
      light[i] += columns[i % SIDE] * rows[i / SIDE];
    }
  }

  /** What moves the light of one star. */
  private interface Drawing {
    void draw(double[] light, Star star);
  }

  private static AverageStar average(AverageStar.Zone zone, List<Star> stars, Drawing drawing) {
    double[] light = new double[SIDE * SIDE];
    stars.forEach(star -> drawing.draw(light, star));
    double peak = java.util.Arrays.stream(light).max().orElseThrow();
    float[] values = new float[light.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) (light[i] / peak);
    }
    return new AverageStar(zone, stars.size(), PER_PX, new Stamp(SIDE, values));
  }

  /** So many stars, where one may be, with round single shapes. */
  private static List<Star> stars(int count, Predicate<double[]> allowed) {
    SplittableRandom random = new SplittableRandom(7);
    List<Star> stars = new ArrayList<>();
    while (stars.size() < count) {
      double[] at = {random.nextDouble(WIDTH), random.nextDouble(HEIGHT)};
      if (allowed.test(at)) {
        stars.add(Fields.star(at[0], at[1], Moments.round(SIGMA_PX * SIGMA_PX), 0.02));
      }
    }
    return stars;
  }

  private static Optional<FaintTail> read(List<Star> stars, Drawing drawing) {
    StarField bare = Fields.field(WIDTH, HEIGHT, stars, List.of());
    List<AverageStar> averages = new ArrayList<>();
    averages.add(average(AverageStar.Zone.WHOLE, stars, drawing));
    averages.add(
        average(AverageStar.Zone.CENTRE, within(bare, FieldShape.CENTRE_LIMIT, 0), drawing));
    averages.add(
        average(
            AverageStar.Zone.MIDWAY,
            within(bare, FieldShape.EDGE_LIMIT, FieldShape.CENTRE_LIMIT),
            drawing));
    averages.add(average(AverageStar.Zone.EDGE, within(bare, 2, FieldShape.EDGE_LIMIT), drawing));
    StarField field =
        new StarField(
            WIDTH,
            HEIGHT,
            stars,
            List.of(),
            Map.of(),
            new SkyState(1000, 30, 0.05, 1, 0),
            new SkyMask(64, java.util.Collections.nCopies(13, "1".repeat(19))),
            averages,
            List.of());
    return FaintTail.of(field, FieldShape.of(field));
  }

  private static List<Star> within(StarField field, double below, double from) {
    return field.stars().stream()
        .filter(star -> FieldShape.radius(field, star) < below)
        .filter(star -> FieldShape.radius(field, star) >= from)
        .toList();
  }

  /** Coma's: along the radius from the middle, its light as the square of the radius. */
  private static void comatic(double[] light, Star star) {
    double x = star.xPx() - WIDTH / 2.0;
    double y = star.yPx() - HEIGHT / 2.0;
    double square = (x * x + y * y) / (WIDTH * WIDTH + HEIGHT * HEIGHT) * 4;
    new Swing(6, 0.3, Math.atan2(y, x)).draw(light, 0.7 * square);
    star(light, 0, 0, 1 - 0.7 * square);
  }

  private static boolean toOneSide(double[] at) {
    return at[0] > 0.55 * WIDTH && Math.abs(at[1] - HEIGHT / 2.0) < 0.3 * HEIGHT
        || Math.hypot(at[0] - WIDTH / 2.0, at[1] - HEIGHT / 2.0) < 150;
  }

  @Test
  void aSwingThatDiesAwayIsFoundInItsSize() {
    for (Swing swing :
        List.of(new Swing(8, 0.2, 0.5), new Swing(6, 0.3, -1.2), new Swing(9, 0.12, 1.5))) {
      FaintTail tail =
          read(stars(60, at -> true), (light, star) -> swing.draw(light, 1)).orElseThrow();
      // The light's r.m.s., which is asked for to 15 %, goes as the root.
      double ratio = Math.sqrt(tail.spin2Px2() / swing.spin2Px2());
      assertTrue(ratio > 0.85 && ratio < 1.15, swing + " " + tail);
      assertEquals(0, Math.sin(tail.angleRad() - swing.angleRad()), 0.05, swing + " " + tail);
      assertTrue(
          Math.abs(tail.spin2Px2() - swing.spin2Px2()) < 2 * tail.errorPx2(), swing + " " + tail);
    }
  }

  @Test
  void tailsAlongTheRadiusAreTheLenssHoweverUnevenlyStarsAreSpread() {
    assertEquals(Optional.empty(), read(stars(60, at -> true), FaintTailTest::comatic));
    assertEquals(
        Optional.empty(), read(stars(25, FaintTailTest::toOneSide), FaintTailTest::comatic));
  }

  @Test
  void theCamerasTailIsFoundBesideTheLenss() {
    Swing swing = new Swing(8, 0.25, 1.0);
    Drawing both =
        (light, star) -> {
          swing.draw(light, 1);
          comatic(light, star);
        };
    FaintTail tail = read(stars(25, FaintTailTest::toOneSide), both).orElseThrow();
    assertEquals(0, Math.sin(tail.angleRad() - swing.angleRad()), 0.2, tail.toString());
  }

  @Test
  void stillStarsAndShortTrailsHaveNone() {
    List<Star> stars = stars(60, at -> true);
    assertEquals(Optional.empty(), read(stars, (light, star) -> star(light, 0, 0, 1)));
    Drawing trail =
        (light, star) -> {
          for (int step = 0; step < 20; step++) {
            star(light, 2 * ((step + 0.5) / 20 - 0.5), 0, 1);
          }
        };
    assertEquals(Optional.empty(), read(stars, trail));
  }

  @Test
  void aSwingsSecondMomentIsThatOfADecayingVibration() {
    // A = 10 px, τ = 1 s, T = 20 s: 1.250 px² (closed form; 1.249 by following the path).
    assertEquals(1.250, FadingSwing.secondMomentPx2(10) / 20, 0.001);
  }
}
