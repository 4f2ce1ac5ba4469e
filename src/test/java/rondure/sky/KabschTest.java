package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class KabschTest {
  private static final double ERROR_RAD = 5e-5;

  private static Direction random(Random random) {
    return Direction.of(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
  }

  private static Direction shaken(Direction d, Random random, double errorRad) {
    return Direction.of(
        d.x() + errorRad * random.nextGaussian(),
        d.y() + errorRad * random.nextGaussian(),
        d.z() + errorRad * random.nextGaussian());
  }

  /** Directions of a 60° field, turned, shaken. */
  private static List<DirectionPair> field(Rotation turn, int count, double error, Random random) {
    List<DirectionPair> pairs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Direction from =
          Direction.of(random.nextDouble() * 1.2 - 0.6, random.nextDouble() * 0.8 - 0.4, 1);
      Direction to = shaken(turn.apply(from), random, error);
      pairs.add(new DirectionPair(from, to, ERROR_RAD));
    }
    return pairs;
  }

  private static double angleBetween(Rotation one, Rotation other) {
    return one.inverse().then(other).angleRad();
  }

  /** Three vectors turned 10° about z, by hand. */
  @Test
  void tenDegreesAboutTheAxisAreFound() {
    double cos = Math.cos(Math.toRadians(10));
    double sin = Math.sin(Math.toRadians(10));
    List<DirectionPair> pairs = new ArrayList<>();
    for (double[] v : new double[][] {{0, 0, 1}, {0.6, 0, 0.8}, {0, 0.6, 0.8}}) {
      pairs.add(
          new DirectionPair(
              new Direction(v[0], v[1], v[2]),
              new Direction(cos * v[0] - sin * v[1], sin * v[0] + cos * v[1], v[2]),
              1));
    }
    Spin found = Kabsch.leastSquares(pairs).perSecond();
    assertEquals(10, Math.toDegrees(found.zRadPerS()), 1e-9);
    assertEquals(0, found.xRadPerS(), 1e-11);
    assertEquals(0, found.yRadPerS(), 1e-11);
  }

  @Property(tries = 300)
  void anyRotationIsRecovered(
      @ForAll long seed, @ForAll @DoubleRange(min = 0, max = 3.14) double a) {
    Random random = new Random(seed);
    Direction axis = random(random);
    Rotation turn = Rotation.ofVector(a * axis.x(), a * axis.y(), a * axis.z());
    List<DirectionPair> pairs = field(turn, 3 + random.nextInt(20), 0, random);
    assertEquals(0, angleBetween(turn, Kabsch.leastSquares(pairs)), 1e-9);
    assertEquals(0, angleBetween(turn, Kabsch.robust(pairs).orElseThrow().rotation()), 1e-9);
  }

  /** Turning both sides by Q turns the answer: Q R Qᵀ. */
  @Property(tries = 200)
  void turningBothSidesTurnsTheAnswer(@ForAll long seed) {
    Random random = new Random(seed);
    Rotation common = Rotation.ofVector(random.nextDouble(), -random.nextDouble(), 1.5);
    List<DirectionPair> pairs = field(Rotation.ofVector(0.1, 0.3, -0.2), 20, 1e-3, random);
    List<DirectionPair> turned =
        pairs.stream()
            .map(p -> new DirectionPair(common.apply(p.from()), common.apply(p.to()), ERROR_RAD))
            .toList();
    Rotation expected = common.inverse().then(Kabsch.leastSquares(pairs)).then(common);
    assertEquals(0, angleBetween(expected, Kabsch.leastSquares(turned)), 1e-9);
  }

  /** Mirrored frames: the axis mirrors and the sense reverses, and it stays a rotation. */
  @Property(tries = 200)
  void flippingBothSidesReversesTheSense(@ForAll long seed) {
    Random random = new Random(seed);
    List<DirectionPair> pairs = field(Rotation.ofVector(0.1, 0.3, -0.2), 20, 1e-3, random);
    List<DirectionPair> flipped =
        pairs.stream()
            .map(p -> new DirectionPair(flip(p.from()), flip(p.to()), ERROR_RAD))
            .toList();
    Spin plain = Kabsch.leastSquares(pairs).perSecond();
    Spin mirrored = Kabsch.leastSquares(flipped).perSecond();
    assertEquals(plain.xRadPerS(), mirrored.xRadPerS(), 1e-9);
    assertEquals(-plain.yRadPerS(), mirrored.yRadPerS(), 1e-9);
    assertEquals(-plain.zRadPerS(), mirrored.zRadPerS(), 1e-9);
  }

  private static Direction flip(Direction d) {
    return new Direction(-d.x(), d.y(), d.z());
  }

  /** One side alone mirrored cannot be a rotation; the nearest rotation is still one. */
  @Test
  void theAnswerIsNeverAReflection() {
    List<DirectionPair> pairs =
        field(Rotation.NONE, 20, 0, new Random(5)).stream()
            .map(p -> new DirectionPair(p.from(), flip(p.to()), 1))
            .toList();
    Rotation found = Kabsch.leastSquares(pairs);
    Direction z = found.apply(new Direction(0, 0, 1));
    Direction x = found.apply(new Direction(1, 0, 0));
    Direction y = found.apply(new Direction(0, 1, 0));
    assertEquals(z.x(), x.y() * y.z() - x.z() * y.y(), 1e-12);
    assertEquals(z.y(), x.z() * y.x() - x.x() * y.z(), 1e-12);
  }

  @Property(tries = 100)
  void aThirdOfGrossOutliersDoesNotMatter(@ForAll long seed) {
    Random random = new Random(seed);
    Rotation turn = Rotation.ofVector(0.02, -0.05, 0.03);
    List<DirectionPair> pairs = new ArrayList<>(field(turn, 60, ERROR_RAD, random));
    List<DirectionPair> wrong = field(Rotation.NONE, 30, 0, random);
    for (int i = 0; i < 30; i++) {
      Direction elsewhere = wrong.get((i + 7) % 30).from();
      pairs.add(new DirectionPair(wrong.get(i).from(), elsewhere, ERROR_RAD));
    }
    RotationFit fit = Kabsch.robust(pairs).orElseThrow();
    assertEquals(0, angleBetween(turn, fit.rotation()), 2e-4);
  }

  /** Least squares, on the other hand, is dragged along: the test above can fail. */
  @Test
  void leastSquaresIsPulledByOutliers() {
    Random random = new Random(3);
    Rotation turn = Rotation.ofVector(0.02, -0.05, 0.03);
    List<DirectionPair> pairs = new ArrayList<>(field(turn, 60, ERROR_RAD, random));
    field(Rotation.NONE, 30, 0, random).forEach(pairs::add);
    assertTrue(angleBetween(turn, Kabsch.leastSquares(pairs)) > 2e-3);
  }

  /** Scatter over 400 trials against the covariance that each states: within 10 %. */
  @Test
  void theCovarianceIsTheScatterOfTheAnswer() {
    Random random = new Random(11);
    Rotation turn = Rotation.ofVector(0.02, -0.05, 0.03);
    double[] seen = new double[3];
    double[] stated = new double[3];
    double scale = 0;
    int trials = 400;
    for (int trial = 0; trial < trials; trial++) {
      RotationFit fit = Kabsch.robust(field(turn, 100, ERROR_RAD, random)).orElseThrow();
      Spin off = turn.inverse().then(fit.rotation()).perSecond();
      double[] errors = {off.xRadPerS(), off.yRadPerS(), off.zRadPerS()};
      RotationCovariance c = fit.covariance();
      double[] variances = {c.xxRad2(), c.yyRad2(), c.zzRad2()};
      scale += fit.scale() / trials;
      for (int axis = 0; axis < 3; axis++) {
        seen[axis] += errors[axis] * errors[axis];
        stated[axis] += variances[axis];
      }
    }
    assertEquals(1, scale, 0.02);
    for (int axis = 0; axis < 3; axis++) {
      assertEquals(1, Math.sqrt(stated[axis] / seen[axis]), 0.1, "axis " + axis);
    }
  }

  @Test
  void whatCannotBeSolvedIsRefused() {
    Direction one = new Direction(0, 0, 1);
    DirectionPair pair = new DirectionPair(one, one, 1);
    assertTrue(Kabsch.robust(List.of()).isEmpty());
    assertTrue(Kabsch.robust(List.of(pair)).isEmpty());
    assertTrue(Kabsch.robust(List.of(pair, pair, pair)).isEmpty(), "all along one line");
    assertThrows(IllegalArgumentException.class, () -> Kabsch.leastSquares(List.of(pair)));
    assertThrows(IllegalArgumentException.class, () -> new DirectionPair(one, one, 0));
  }
}
