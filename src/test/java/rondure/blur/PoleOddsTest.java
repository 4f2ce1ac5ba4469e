package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.sky.Aim;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.sky.ImageVelocity;
import rondure.sky.SkyMotion;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** Whose a lone frame's smear is: tensors from the gnomonic flow, T²/12 v vᵀ, and from lines. */
class PoleOddsTest {
  private static final int WIDTH = 6000;
  private static final int HEIGHT = 4000;
  private static final double SECONDS = 16;
  private static final double LONG = 12_000;
  private static final double LONGEST = 600_000;
  private static final double WIDE = 3_300;

  private static StarField field(
      int count, BiFunction<Double, Double, Moments> blur, SplittableRandom random) {
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double x = random.nextDouble() * WIDTH;
      double y = random.nextDouble() * HEIGHT;
      Moments clean = Moments.round(0.9).plus(blur.apply(x, y));
      double noise = 0.04 * clean.minorPx2();
      Moments seen =
          new Moments(
              Math.max(0.1, clean.xxPx2() + noise * random.nextGaussian()),
              clean.xyPx2() + noise / Math.sqrt(2) * random.nextGaussian(),
              Math.max(0.1, clean.yyPx2() + noise * random.nextGaussian()));
      stars.add(Fields.star(x, y, seen, noise));
    }
    return Fields.field(WIDTH, HEIGHT, stars, List.of());
  }

  private static BiFunction<Double, Double, Moments> trail(double focalPx, Direction pole) {
    Camera camera = Camera.rectilinear(focalPx, WIDTH, HEIGHT);
    return (x, y) -> {
      ImageVelocity velocity = SkyMotion.velocity(camera, pole, x, y);
      return Moments.line(velocity.speedPxPerS() * SECONDS, velocity.directionRad());
    };
  }

  private static PoleOdds odds(StarField field, double focalPx) {
    return PoleOdds.of(SmearField.of(field, focalPx), SECONDS);
  }

  /** A line everywhere, as so long a lens draws both. */
  private static double oddsOfLine(double ofLargest) {
    double largest = SkyMotion.smallFieldTrailPx(LONGEST, 0, SECONDS / 50);
    StarField lines =
        field(80, (x, y) -> Moments.line(ofLargest * largest, 0.5), new SplittableRandom(3));
    return PoleOdds.of(SmearField.of(lines, LONGEST), SECONDS / 50).skyLogOdds();
  }

  /**
   * Where the lens is so long that all stars are smeared alike, only the size tells. Counted by 6
   * million draws in numpy of aims even over the sphere, shakes and tolerances of the same sizes
   * (seed 1): the log-odds of the sky among those that smear by as much.
   */
  @Test
  void onAVeryLongLensTheSizeAloneTellsAsCountedByDraws() {
    double[][] counted = {{0.5, 1.41}, {0.7, 1.93}, {0.8, 2.23}, {0.9, 2.62}};
    for (double[] row : counted) {
      assertEquals(row[1], oddsOfLine(row[0]), 0.4, "smear of " + row[0] + " of the largest trail");
    }
    assertTrue(oddsOfLine(1.5) < -3, "beyond: " + oddsOfLine(1.5));
  }

  @Test
  void onAWideLensThePoleIsFoundFromDirectionsAlone() {
    Direction pole = new Aim(45, 20, 30).northPole();
    StarField trailed = field(150, trail(WIDE, pole), new SplittableRandom(5));
    PoleOdds found = odds(trailed, WIDE);
    double off = Math.toDegrees(Math.acos(Math.min(1, Math.abs(found.pole().dot(pole)))));
    assertTrue(found.skyLogOdds() > 2, found.toString());
    assertTrue(off < 4, off + " degrees off the pole");
  }

  /** Round lamps below the sky, a fifth of what is measured, and no other frame to tell them. */
  @Test
  void lampsAmongTheStarsNeitherTurnThePoleNorStayAmongThem() {
    Direction pole = new Aim(45, 20, 30).northPole();
    BiFunction<Double, Double, Moments> sky = trail(WIDE, pole);
    StarField mixed =
        field(
            60,
            (x, y) -> y > 0.8 * HEIGHT ? Moments.round(0) : sky.apply(x, y),
            new SplittableRandom(7));
    PoleOdds found = odds(mixed, WIDE);
    double off = Math.toDegrees(Math.acos(Math.min(1, Math.abs(found.pole().dot(pole)))));
    assertTrue(found.skyLogOdds() > 1 && off < 8, found + ", off " + off);
    FrameEvidence frame =
        new FrameEvidence(
            mixed,
            Optional.of(SECONDS),
            Optional.of(WIDE),
            Optional.empty(),
            Optional.empty(),
            false,
            SceneReference.of(
                List.of(new SceneReference.Member(FieldShape.of(mixed), Optional.empty()))));
    List<Star> left = Strays.without(frame).stars();
    long lamps = mixed.stars().stream().filter(star -> star.yPx() > 0.8 * HEIGHT).count();
    long kept = left.stream().filter(star -> star.yPx() > 0.8 * HEIGHT).count();
    assertTrue(lamps >= 8 && kept <= lamps / 4, kept + " of " + lamps + " lamps left");
    assertTrue(left.size() > 40, left.size() + " left");
  }

  /**
   * Aims even over the sphere (the share of aims within |sin δ| < s of the equator is s,
   * Archimedes), two in five cameras shaken along a line whose second moment is even in its
   * logarithm: of frames said to be the sky's with p, p are.
   */
  @Test
  void oddsAreAsOftenRightAsTheySay() {
    SplittableRandom random = new SplittableRandom(11);
    double said = 0;
    double sky = 0;
    double brier = 0;
    int frames = 0;
    for (int i = 0; i < 120; i++) {
      Direction pole = evenly(random);
      double shake = random.nextDouble() < 0.4 ? 0.15 * Math.pow(100, random.nextDouble()) : 0;
      double angle = Math.PI * random.nextDouble();
      BiFunction<Double, Double, Moments> trail = trail(LONG, pole);
      double largest = trail.apply(WIDTH / 2.0, HEIGHT / 2.0).meanPx2();
      if (largest + shake < 0.5) {
        continue;
      }
      Moments line = Moments.line(Math.sqrt(24 * shake), angle);
      StarField seen = field(50, (x, y) -> trail.apply(x, y).plus(line), random);
      double p = Excess.logistic(odds(seen, LONG).skyLogOdds());
      double truth = largest > shake ? 1 : 0;
      said += p;
      sky += truth;
      brier += (p - truth) * (p - truth);
      frames++;
    }
    assertEquals(sky / frames, said / frames, 0.08, frames + " frames");
    assertTrue(brier / frames < 0.16, "Brier " + brier / frames);
  }

  private static Direction evenly(SplittableRandom random) {
    double z = 2 * random.nextDouble() - 1;
    double turn = 2 * Math.PI * random.nextDouble();
    double radius = Math.sqrt(1 - z * z);
    return Direction.of(radius * Math.cos(turn), radius * Math.sin(turn), z);
  }
}
