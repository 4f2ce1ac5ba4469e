package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Orientation;
import rondure.stars.Star;
import rondure.testing.Fields;

/**
 * How well two frames tell the pole: 150 stars, 0.2 px r.m.s. per axis, 36 × 24 mm at 6 µm. The
 * wanted values were computed apart from this program (random stars, Kabsch, 60 trials) and agree
 * with σ_pole = √(σ_roll² + σ_tilt²)/(ω Δt), σ_roll = √2 σ/(r_rms √n), σ_tilt = √2 σ p/(f √n).
 */
class PoleErrorTest {
  private static final int WIDTH = 6000;
  private static final int HEIGHT = 4000;
  private static final int STARS = 150;
  private static final double NOISE_PX = 0.2;
  private static final int TRIALS = 16;

  @ParameterizedTest
  @CsvSource({
    "14, 30, 45, 0.333", "14, 30, 90, 0.342", "24, 30, 45, 0.283", "24, 300, 45, 0.028",
    "24, 300, 90, 0.034", "24, 300, 0, 0.019", "50, 300, 45, 0.023", "135, 300, 90, 0.030",
    "24, 1800, 45, 0.0044"
  })
  void twoFramesTellThePoleAsWellAsTheyCan(
      double focalMm, double seconds, double offAxisDeg, double wantedDeg) {
    double squares = 0;
    double normalised = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      Random chance = new Random(7919L * trial + (long) (focalMm + seconds + offAxisDeg));
      double off = Math.toRadians(offAxisDeg);
      Direction pole = Direction.of(Math.sin(off) * 0.6, -Math.sin(off) * 0.8, Math.cos(off));
      SceneSky sky = registered(pair(chance, focalMm * 1000 / 6, pole, seconds));
      assertEquals(SceneSky.Finding.SKY_TURNS, sky.finding());
      double error = Math.toDegrees(Math.acos(Math.min(1, sky.pole().orElseThrow().dot(pole))));
      squares += error * error / TRIALS;
      normalised += Math.pow(error / sky.poleErrorDeg(), 2) / TRIALS;
    }
    // The pole is given in the first frame's axes, whose own place is as wrong as the second's.
    assertTrue(Math.sqrt(squares) < 2 * wantedDeg, "rms " + Math.sqrt(squares));
    assertTrue(normalised > 0.1 && normalised < 4, "squared error over stated " + normalised);
  }

  /** Registered with the true camera: what is tested is the pole, not the calibration. */
  private static SceneSky registered(List<SkyShot> shots) {
    Camera camera = Camera.rectilinear(shots.get(0).focalLengthPx().orElseThrow(), WIDTH, HEIGHT);
    SceneClock clock = new SceneClock(shots.stream().map(SkyShot::midSeconds).toList(), 0.01);
    List<FrameStars> frames = shots.stream().map(s -> new FrameStars(s.field(), camera)).toList();
    SkyStory.Matched matched =
        new SkyStory.Matched(camera, frames, StarChain.of(camera, frames, clock));
    return new SkyStory(
            shots, clock, matched, new Sight.Trust(true, true, CameraDoubt.of(1e-4, 1e-4)))
        .told();
  }

  private static List<SkyShot> pair(Random chance, double focalPx, Direction pole, double seconds) {
    Camera camera = Camera.rectilinear(focalPx, WIDTH, HEIGHT);
    Rotation turn = Rotation.of(Spin.ofSky(pole), seconds);
    List<Star> first = new ArrayList<>();
    List<Star> second = new ArrayList<>();
    for (int i = 0; i < STARS; i++) {
      double x = chance.nextDouble() * (WIDTH - 1);
      double y = chance.nextDouble() * (HEIGHT - 1);
      double flux = 1000 / (0.01 + chance.nextDouble());
      first.add(star(chance, x, y, flux));
      camera
          .project(turn.apply(camera.direction(x, y)))
          .filter(p -> p.xPx() > 0 && p.yPx() > 0 && p.xPx() < WIDTH - 1 && p.yPx() < HEIGHT - 1)
          .ifPresent(p -> second.add(star(chance, p.xPx(), p.yPx(), flux)));
    }
    return List.of(shot(first, 0, focalPx), shot(second, seconds, focalPx));
  }

  /** A star whose signal-to-noise ratio tells the error of its place: √2 σ/ν. */
  private static Star star(Random chance, double x, double y, double flux) {
    double seenX = x + NOISE_PX * chance.nextGaussian();
    double seenY = y + NOISE_PX * chance.nextGaussian();
    return TripodNight.star(seenX, seenY, flux, Math.sqrt(2) / NOISE_PX, 1);
  }

  private static SkyShot shot(List<Star> stars, double mid, double focalPx) {
    return new SkyShot(
        Fields.field(WIDTH, HEIGHT, stars, List.of()),
        Optional.of(mid),
        0.01,
        Optional.of(10.0),
        Optional.of(focalPx),
        Orientation.NORMAL);
  }
}
