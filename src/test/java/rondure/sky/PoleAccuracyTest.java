package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How well two frames give the pole and the sky's rate: 36 x 24 mm, 6 µm, 150 stars, 0.2 px per
 * axis. Reference figures from an independent Monte Carlo (numpy) of 60 trials.
 */
class PoleAccuracyTest {
  private static final int TRIALS = 60;
  private static final double NOISE_PX = 0.2;

  private record Answer(double poleErrorDeg, double rateShare, double residualPx) {}

  private static Camera camera(double focalMm) {
    return Camera.rectilinear(focalMm * 1000 / 6, 6000, 4000);
  }

  private static Direction pole(double offAxisDeg) {
    double angle = Math.toRadians(offAxisDeg);
    return Direction.of(0, -Math.sin(angle), Math.cos(angle));
  }

  private static ImagePoint shaken(ImagePoint p, double noise, Random random) {
    return new ImagePoint(
        p.xPx() + noise * random.nextGaussian(), p.yPx() + noise * random.nextGaussian());
  }

  /** Stars over the frame, seen again after a while, read with another camera. */
  private static Answer trial(
      Camera truth, Camera reading, Direction pole, double seconds, double noise, Random random) {
    List<DirectionPair> pairs = new ArrayList<>();
    for (int i = 0; i < 150; i++) {
      ImagePoint at = new ImagePoint(6000 * random.nextDouble(), 4000 * random.nextDouble());
      Optional<ImagePoint> then = SkyMotion.positionAfter(truth, pole, at, seconds);
      if (then.isPresent() && inside(then.get())) {
        ImagePoint seen = shaken(at, noise, random);
        ImagePoint again = shaken(then.get(), noise, random);
        pairs.add(
            new DirectionPair(
                reading.direction(seen.xPx(), seen.yPx()),
                reading.direction(again.xPx(), again.yPx()),
                1 / reading.focalLengthPx()));
      }
    }
    return read(pairs, reading, pole, seconds);
  }

  private static boolean inside(ImagePoint p) {
    return p.xPx() >= 0 && p.xPx() < 6000 && p.yPx() >= 0 && p.yPx() < 4000;
  }

  private static Answer read(
      List<DirectionPair> pairs, Camera reading, Direction pole, double seconds) {
    Rotation turn = Kabsch.leastSquares(pairs);
    Spin spin = turn.perSecond().times(1 / seconds);
    Direction found = Direction.of(-spin.xRadPerS(), -spin.yRadPerS(), -spin.zRadPerS());
    double square = 0;
    for (DirectionPair pair : pairs) {
      ImagePoint predicted = reading.project(turn.apply(pair.from())).orElseThrow();
      double miss = predicted.distanceTo(reading.project(pair.to()).orElseThrow());
      square += miss * miss / (2 * pairs.size()); // per axis
    }
    return new Answer(
        Math.toDegrees(Math.acos(Math.min(1, found.dot(pole)))),
        spin.rateRadPerS() / SkyMotion.SIDEREAL_RATE_RAD_PER_S,
        Math.sqrt(square));
  }

  @ParameterizedTest
  @CsvSource({
    "14, 30, 0.333, 0.342, 0.272, 0.41, 0.29, 0.53",
    "24, 30, 0.283, 0.338, 0.196, 0.43, 0.22, 0.54",
    "24, 300, 0.028, 0.034, 0.019, 0.050, 0.025, 0.043",
    "50, 300, 0.023, 0.032, 0.010, 0.037, 0.013, 0.050",
    "135, 300, 0.023, 0.030, 0.003, 0.037, 0.005, 0.048",
    "24, 1800, 0.0044, 0.0066, 0.0032, 0.007, 0.004, 0.010"
  })
  void poleAndRateAreAsGoodAsTheReference(
      double focalMm,
      double seconds,
      double pole45,
      double pole90,
      double pole0,
      double rate45,
      double rate90,
      double rate0) {
    within2(focalMm, seconds, 45, pole45, rate45);
    within2(focalMm, seconds, 90, pole90, rate90);
    within2(focalMm, seconds, 0, pole0, rate0);
  }

  private static void within2(
      double focalMm, double seconds, double offAxisDeg, double poleDeg, double ratePercent) {
    Random random = new Random(7);
    double poleSquare = 0;
    double rateSquare = 0;
    for (int i = 0; i < TRIALS; i++) {
      Answer one =
          trial(camera(focalMm), camera(focalMm), pole(offAxisDeg), seconds, NOISE_PX, random);
      poleSquare += one.poleErrorDeg() * one.poleErrorDeg() / TRIALS;
      rateSquare += Math.pow(100 * (one.rateShare() - 1), 2) / TRIALS;
    }
    String where = offAxisDeg + "° off axis";
    near(poleDeg, Math.sqrt(poleSquare), where);
    near(ratePercent, Math.sqrt(rateSquare), where);
  }

  private static void near(double expected, double found, String what) {
    assertTrue(
        found < 2 * expected && found > expected / 2,
        what + ": expected about " + expected + ", was " + found);
  }

  /**
   * Pole 90° off: √(σ_roll² + σ_tilt²) / (ω Δt), σ_roll = √2 σ / (r_rms √n), σ_tilt = √2 σ p / (f
   * √n): 0.0332° for f = 24, 300 s, n = 146; the stated covariance gives the same.
   */
  @Test
  void theStatedCovarianceIsTheClosedForm() {
    List<DirectionPair> pairs = new ArrayList<>();
    Random random = new Random(2);
    Camera camera = camera(24);
    double error = Math.sqrt(2) * NOISE_PX / camera.focalLengthPx();
    for (int i = 0; i < 146; i++) {
      Direction d = camera.direction(6000 * random.nextDouble(), 4000 * random.nextDouble());
      Direction shaken =
          Direction.of(
              d.x() + error * random.nextGaussian(),
              d.y() + error * random.nextGaussian(),
              d.z() + error * random.nextGaussian());
      pairs.add(new DirectionPair(d, shaken, error));
    }
    RotationCovariance c = Kabsch.robust(pairs).orElseThrow().covariance();
    double turned = SkyMotion.SIDEREAL_RATE_RAD_PER_S * 300;
    double poleDeg = Math.toDegrees(Math.sqrt(c.zzRad2() + c.xxRad2()) / turned);
    assertEquals(0.0332, poleDeg, 0.25 * 0.0332);
  }

  /**
   * f taken 1 % and 3 % too long, pole 45° off, 24 mm, 300 s (numpy, no noise; residual per axis).
   */
  @ParameterizedTest
  @CsvSource({"1.01, 0.197, 0.99636, 0.156", "1.03, 0.594, 0.98922, 0.468"})
  void aWrongFocalLengthShowsInPoleRateAndResidual(
      double factor, double poleDeg, double rateShare, double residualPx) {
    Camera truth = camera(24);
    Camera wrong = truth.with(factor * truth.focalLengthPx(), 0);
    Answer answer = trial(truth, wrong, pole(45), 300, 0, new Random(1));
    assertEquals(poleDeg, answer.poleErrorDeg(), 0.05 * poleDeg);
    assertEquals(rateShare, answer.rateShare(), 0.05 * (1 - rateShare));
    assertEquals(residualPx, answer.residualPx(), 0.1 * residualPx);
  }
}
