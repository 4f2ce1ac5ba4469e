package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.stars.Star;
import rondure.testing.Fields;

/**
 * Star lists of a night of frames from a tripod that may move, drawn with the tests' own projector
 * ({@link TurningSky}): for tests only. Random stars over the sphere, faint ones more numerous,
 * their places as uncertain as their signal-to-noise ratios tell.
 */
final class TripodNight {
  static final double EXPOSURE_SECONDS = 10;

  /** Centroids of bright stars are no better than this, px. */
  private static final double LEAST_NOISE_PX = 0.02;

  /** Measured places are worse than √2 σ/ν by a fifth, as in TruthFields. */
  private static final double ABOVE_THE_BOUND = 1.2;

  private static final double WIDTH_PX = 1.2;
  private static final double FAINTEST_SNR = 8;

  final TurningSky sky;
  double told = 1;
  Motion motion = seconds -> new double[3];
  private final Random chance;

  /** The camera's own turn (pitch, yaw, roll; rad) at a time, the mean over an exposure. */
  interface Motion {
    double[] turnRad(double seconds);
  }

  private record Seen(double[] direction, double snr) {}

  TripodNight(long seed) {
    sky = new TurningSky(seed);
    chance = new Random(seed + 77);
  }

  /** All frames, in time order. */
  List<SkyShot> shots() {
    List<Seen> stars = new ArrayList<>();
    // Counts grow by 10^0.4 a magnitude (common practice): the number above a flux as its inverse.
    for (double[] direction : sky.stars()) {
      stars.add(new Seen(direction, FAINTEST_SNR / Math.max(1e-3, chance.nextDouble())));
    }
    List<SkyShot> shots = new ArrayList<>();
    for (int frame = 0; frame < sky.frames; frame++) {
      shots.add(shot(stars, frame));
    }
    return shots;
  }

  private SkyShot shot(List<Seen> stars, int frame) {
    double seconds = seconds(frame);
    List<Star> seen = new ArrayList<>();
    for (Seen star : stars) {
      double[] at = sky.place(inCamera(star.direction(), seconds));
      double snr = Math.min(400, star.snr());
      double noise = Math.hypot(LEAST_NOISE_PX, ABOVE_THE_BOUND * Math.sqrt(2) * WIDTH_PX / snr);
      double x = at[0] + noise * chance.nextGaussian();
      double y = at[1] + noise * chance.nextGaussian();
      if (x > 0 && y > 0 && x < TurningSky.WIDTH - 1 && y < TurningSky.HEIGHT - 1) {
        seen.add(star(x, y, 100 * star.snr(), snr, WIDTH_PX));
      }
    }
    return new SkyShot(
        Fields.field(TurningSky.WIDTH, TurningSky.HEIGHT, seen, List.of()),
        sky.clock().secondsOf(frame),
        sky.clockStepSeconds,
        Optional.of(EXPOSURE_SECONDS),
        Optional.of(told * sky.focalPx),
        Orientation.NORMAL);
  }

  private double seconds(int frame) {
    return (frame - (sky.frames - 1) / 2.0) * sky.intervalSeconds;
  }

  private double[] inCamera(double[] direction, double seconds) {
    double[] seen = TurningSky.turned(direction, sky.pole(), -TurningSky.RATE * seconds);
    double[] turn = motion.turnRad(seconds);
    seen = TurningSky.turned(seen, new double[] {1, 0, 0}, turn[0]);
    seen = TurningSky.turned(seen, new double[] {0, 1, 0}, turn[1]);
    return TurningSky.turned(seen, new double[] {0, 0, 1}, turn[2]);
  }

  /** The sky's spin in the camera's axes when a frame was taken. */
  Spin trueSpin(int frame) {
    double[] pole = sky.pole();
    double[] turn = motion.turnRad(seconds(frame));
    pole = TurningSky.turned(pole, new double[] {1, 0, 0}, turn[0]);
    pole = TurningSky.turned(pole, new double[] {0, 1, 0}, turn[1]);
    pole = TurningSky.turned(pole, new double[] {0, 0, 1}, turn[2]);
    return Spin.ofSky(Direction.of(pole[0], pole[1], pole[2]));
  }

  /** A round star that tells how well its place is known. */
  static Star star(double x, double y, double flux, double snr, double widthPx) {
    Star plain = Fields.star(x, y, Moments.round(widthPx * widthPx), 0.05);
    return new Star(
        x,
        y,
        flux,
        snr,
        plain.moments(),
        plain.xxErrorPx2(),
        plain.xyErrorPx2(),
        plain.yyErrorPx2(),
        plain.fwhmMajorPx(),
        plain.fwhmMinorPx(),
        0,
        0,
        1.2,
        0.3);
  }
}
